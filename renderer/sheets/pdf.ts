import type { PDFDocumentProxy } from 'pdfjs-dist';
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url';

export type Pdf = PDFDocumentProxy;

/** CSS pixels per point: a point is 1/72 inch, a CSS pixel 1/96. */
export const PIXELS_PER_POINT = 96 / 72;

/** Opens a PDF for drawing. The viewer's code is fetched with the first one. The bytes stay the caller's. */
export async function openPdf(bytes: Uint8Array<ArrayBuffer>): Promise<Pdf> {
  const { getDocument, GlobalWorkerOptions } = await import('pdfjs-dist');
  GlobalWorkerOptions.workerSrc = workerUrl;
  // Our sheets embed their fonts and hold no scripts or forms; nothing else is to be fetched or evaluated.
  const options = {
    data: bytes.slice(),
    useWasm: false,
    useWorkerFetch: false,
    isEvalSupported: false,
    enableXfa: false,
  };
  return getDocument(options).promise;
}

/** Draws one page (from 1) on a canvas at a scale; 1 is 72 dpi. */
export async function drawPage(
  pdf: Pdf,
  number: number,
  canvas: HTMLCanvasElement,
  scale: number,
): Promise<void> {
  const page = await pdf.getPage(number);
  const viewport = page.getViewport({ scale });
  canvas.width = Math.floor(viewport.width);
  canvas.height = Math.floor(viewport.height);
  await page.render({ canvas, viewport }).promise;
  page.cleanup();
}

/** The width and height of a page (from 1), in points. */
export async function pageSize(pdf: Pdf, number: number): Promise<{ width: number; height: number }> {
  const { width, height } = (await pdf.getPage(number)).getViewport({ scale: 1 });
  return { width, height };
}
