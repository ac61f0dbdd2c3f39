import type { PageText } from '@core/datasheets/lines';
import { pageText } from '@core/datasheets/page-text';
import { Problem } from '@core/problems/problem';
import type { PDFDocumentProxy } from 'pdfjs-dist';
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url';

/** So many pages are read: a data sheet says all of itself on fewer. */
export const MOST_PAGES = 40;
const LARGEST_MB = 50;
/** A page holds a few thousand pieces of text; one made to hang holds more. */
const MOST_PIECES = 20_000;
/** No sheet takes longer to read; one that does is made to. */
const LONGEST_MS = 20_000;

/** A sheet that is open: its pages can be drawn until it is closed. */
export interface OpenSheet {
  pdf: PDFDocumentProxy;
  pages: PageText[];
  close(): void;
}

const refused = (title: string, advice: string): Problem =>
  new Problem({ code: 'invalid-input', title, advice });

export const scanned = (): Problem =>
  refused(
    'This PDF holds pictures of pages, and no text.',
    'It was scanned. Ask its supplier for the sheet as it was written, or attach it to the material and type what it says.',
  );
const encrypted = (): Problem =>
  refused(
    'This PDF is locked with a password.',
    'Open it in the program that you read it with, save or print it as a PDF without the password, and choose that file.',
  );
const damaged = (): Problem =>
  refused(
    'This PDF is damaged or cut short.',
    'Copy it again from where it came from, or ask for it to be sent anew. Nothing was read from it.',
  );
const tooSlow = (): Problem =>
  refused(
    'This PDF takes far longer to read than a data sheet should; reading was stopped.',
    'If it comes from somebody whom you do not know, do not open it. Otherwise print it as a new PDF, and choose that.',
  );

function refuseOther(bytes: Uint8Array): void {
  if (bytes.length > LARGEST_MB * 1_000_000)
    throw new Problem({
      code: 'too-large',
      title: `This file holds ${Math.round(bytes.length / 1_000_000)} MB; ${LARGEST_MB} MB is the most for a data sheet.`,
      advice: 'Save the pages about the material as a PDF of their own, and choose that.',
    });
  // The mark stands within the first 1,024 bytes (ISO 32000-1, annex H, note 13).
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 1024));
  if (!head.includes('%PDF-'))
    throw refused(
      'This file is not a PDF, whatever its name says.',
      'Choose the data sheet as a PDF. A table of materials is taken in as CSV or XLSX.',
    );
}

function told(error: unknown): unknown {
  const { name } = error as { name?: string };
  if (name === 'PasswordException') return encrypted();
  if (name === 'InvalidPDFException' || name === 'FormatError' || name === 'UnknownErrorException')
    return damaged();
  return error;
}

async function textsOf(pdf: PDFDocumentProxy, on: (page: number) => void): Promise<PageText[]> {
  const pages: PageText[] = [];
  for (let number = 1; number <= Math.min(pdf.numPages, MOST_PAGES); number += 1) {
    on(number);
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    const placed = items.slice(0, MOST_PIECES).flatMap((item) => ('str' in item ? [item] : []));
    pages.push(pageText(number, page.getViewport({ scale: 1 }), placed));
  }
  return pages;
}

/**
 * Opens a data sheet and reads its text, in a worker that can be stopped at any time.
 * @param on told which page is read
 * @throws Problem when it is no PDF, is locked, damaged, or takes too long; AbortError once `signal` aborts
 */
export async function openSheet(
  bytes: Uint8Array<ArrayBuffer>,
  signal: AbortSignal,
  on: (page: number) => void,
): Promise<OpenSheet> {
  refuseOther(bytes);
  const { getDocument, PDFWorker } = await import('pdfjs-dist');
  const port = new Worker(workerUrl, { type: 'module' });
  const worker = PDFWorker.create({ port });
  const options = { useWasm: false, useWorkerFetch: false, isEvalSupported: false, enableXfa: false };
  // A worker that hangs hears nothing: it is ended from outside.
  const close = (): void => port.terminate();
  const slow = AbortSignal.timeout(LONGEST_MS);
  const ended = new Promise<never>((_, reject) => {
    slow.addEventListener('abort', () => reject(tooSlow()));
    signal.addEventListener('abort', () => reject(new DOMException('Stopped.', 'AbortError')));
    port.addEventListener('error', () => reject(damaged()));
  });
  const read = async (): Promise<OpenSheet> => {
    const pdf = await getDocument({ data: bytes.slice(), worker, ...options }).promise;
    return { pdf, pages: await textsOf(pdf, on), close };
  };
  try {
    return await Promise.race([read(), ended]);
  } catch (error) {
    close();
    throw told(error);
  } finally {
    // Nobody waits for it any more.
    ended.catch(() => undefined);
  }
}
