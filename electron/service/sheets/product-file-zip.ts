import { setImmediate } from 'node:timers/promises';
import { formatDate } from '@core/locale/dates';
import { endingOf } from '@core/materials/document';
import { Problem } from '@core/problems/problem';
import { fold } from '@core/quantities/fold';
import { id } from '@core/record/id';
import type { Settings } from '@core/settings/settings';
import { filedMaterials, gapsOf, type ProductFile } from '@core/sheets/product-file/product-file-sheet';
import { sheetFileName } from '@core/sheets/requests';
import { allergenRuleOn } from '@core/labelling/allergens';
import { labelFormsOf } from '@core/labelling/forms';
import { LABEL_FORM_NAMES } from '@core/labelling/substance-names';
import { FILE_PARTS, FILE_PART_TITLES } from '@core/sheets/product-file/file-parts';
import type { OpenLibrary } from '@db/library/open-library';
import { readSettings } from '@db/settings/settings';
import { Zip, ZipPassThrough } from 'fflate';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import type { SheetJob } from './job';
import type { SheetSubject } from './kinds/all';
import { readProductFile } from './kinds/file';

export const zipRequest = z.object({ versionId: id, replaceUnprintable: z.boolean().default(false) });

/** A part of the folder: where it stands, and how its bytes are made when it is its turn. */
interface Entry {
  path: string;
  bytes(): Promise<Uint8Array>;
}

/** A name that every system takes. */
const plain = (text: string): string =>
  fold(text)
    .replace(/[^a-z0-9.]+/g, '-')
    .replace(/^[-.]+|[-.]+$/g, '')
    .slice(0, 60) || 'document';

/** Gives each path once: a second one of a name is numbered. */
function distinct(): (folder: string, name: string, ending: string) => string {
  const used = new Set<string>();
  return (folder, name, ending) => {
    for (let count = 1; ; count += 1) {
      const path = `${folder}${plain(name)}${count > 1 ? `-${count}` : ''}.${ending}`;
      if (used.has(path)) continue;
      used.add(path);
      return path;
    }
  };
}

type Print = (subject: SheetSubject) => Promise<Uint8Array>;

function sheetEntries(file: ProductFile, print: Print, onDay: string): Entry[] {
  const { formula } = file;
  const allergens = allergenRuleOn(onDay);
  const subjects: [string, SheetSubject][] = [
    ['00-product-file.pdf', { kind: 'file', of: file }],
    [
      '01-formula.pdf',
      { kind: 'formula', of: { formula, options: { forSharing: false, tradeNames: true } } },
    ],
    ...labelFormsOf(formula.content.market).map((form, at): [string, SheetSubject] => [
      at === 0 ? '02-label-and-law.pdf' : `02-label-and-law-${plain(LABEL_FORM_NAMES[form])}.pdf`,
      { kind: 'label', of: { formula, options: { form, allergens } } },
    ]),
    ['03-exposure.pdf', { kind: 'exposure', of: formula }],
    ...FILE_PARTS.map((part, at): [string, SheetSubject] => [
      `0${4 + at}-${plain(FILE_PART_TITLES[part])}.pdf`,
      { kind: 'part', of: { part, file } },
    ]),
  ];
  return subjects.map(([path, subject]) => ({ path, bytes: () => print(subject) }));
}

function kept(library: OpenLibrary, sha256: string): () => Promise<Uint8Array> {
  return async () => {
    try {
      return await library.attachments.get(sha256);
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      // One damaged document must not cost the others: what is wrong stands in its place.
      return new TextEncoder().encode(`${error.message} ${error.advice}\n`);
    }
  };
}

function materialEntries(library: OpenLibrary, file: ProductFile, print: Print): Entry[] {
  const name = distinct();
  return filedMaterials(file.formula).flatMap((material): Entry[] => {
    const folder = `materials/${plain(material.tradeName)}/`;
    const photo = file.photos[material.id] ?? null;
    return [
      {
        path: name(folder, 'specification', 'pdf'),
        bytes: () => print({ kind: 'material', of: { material, photo } }),
      },
      ...material.documents.map(({ title, kind, mediaType, sha256 }) => ({
        path: name(folder, `${kind} ${title}`, endingOf({ mediaType, title })),
        bytes: kept(library, sha256),
      })),
    ];
  });
}

function reportEntries(library: OpenLibrary, { formula: { content } }: ProductFile): Entry[] {
  const name = distinct();
  return content.reports.map(({ title, kind, mediaType, sha256, versionNumber }) => ({
    path: name(
      'reports/',
      `${kind} ${versionNumber === null ? '' : `version ${versionNumber} `}${title}`,
      endingOf({ mediaType, title }),
    ),
    bytes: kept(library, sha256),
  }));
}

function batchEntries(library: OpenLibrary, { batches }: ProductFile): Entry[] {
  const name = distinct();
  return batches.flatMap(({ number, documents }) =>
    documents.map(({ title, kind, mediaType, sha256 }) => ({
      path: name(`batches/${plain(number)}/`, `${kind} ${title}`, endingOf({ mediaType, title })),
      bytes: kept(library, sha256),
    })),
  );
}

/** What the folder holds and what it lacks, to be read without any program. */
function contentsText(file: ProductFile, entries: readonly Entry[], settings: Settings, at: string): string {
  const { content, version } = file.formula;
  return [
    `Product file: ${content.name}, ${content.code}, version ${version.number}`,
    `Put together on ${formatDate(at, settings.languageRegion)}`,
    '',
    'What it holds:',
    ...entries.map(({ path }) => `  ${path}`),
    '',
    'What is missing:',
    ...gapsOf(file).map(({ part, says }) => `  ${part}: ${says}`),
    '',
    'No product safety report: a qualified safety assessor and the law where it is sold decide.',
    '',
  ].join('\r\n');
}

/** Puts the entries into a ZIP one after the other: each is made when its turn comes, and let go again. */
function zipped(entries: readonly Entry[], mtime: Date): ReadableStream<Uint8Array> {
  return new ReadableStream<Uint8Array>({
    async start(controller) {
      const zip = new Zip((error, chunk, final) => {
        if (error) controller.error(error);
        else {
          controller.enqueue(chunk);
          if (final) controller.close();
        }
      });
      try {
        for (const entry of entries) {
          const part = new ZipPassThrough(entry.path);
          part.mtime = mtime;
          zip.add(part);
          part.push(await entry.bytes(), true);
          await setImmediate();
        }
        zip.end();
      } catch (error) {
        controller.error(error);
      }
    },
  });
}

/** A version's whole file as a folder of its parts. @throws Problem `not-found`, and as the sheets where one cannot be printed */
export async function productFileZip(
  context: ServiceContext,
  { versionId, replaceUnprintable }: z.infer<typeof zipRequest>,
  signal: AbortSignal,
): Promise<{ stream: ReadableStream<Uint8Array>; fileName: string }> {
  const { library } = context.session.current();
  const file = await readProductFile(library, versionId);
  const settings = readSettings(library);
  const printedAt = context.now().toISOString();
  const print: Print = async (subject) => {
    const job: SheetJob = { subject, settings, printedAt, replaceUnprintable };
    if (context.printing) return context.printing.run(job, signal);
    const { printSheet } = await import('./job');
    return printSheet(job);
  };
  const sheets = sheetEntries(file, print, printedAt.slice(0, 10));
  // Printed before anything is sent: what cannot be printed is then told as every refusal is.
  const whole = await (sheets[0]?.bytes() ?? Promise.resolve(new Uint8Array()));
  const [, ...others] = sheets;
  const rest = [
    ...[...others, ...reportEntries(library, file), ...batchEntries(library, file)],
    ...materialEntries(library, file, print),
  ];
  const first: Entry = { path: sheets[0]?.path ?? '', bytes: () => Promise.resolve(whole) };
  const all = [first, ...rest];
  const text = contentsText(file, all, settings, printedAt);
  const contents: Entry = {
    path: 'contents.txt',
    bytes: () => Promise.resolve(new TextEncoder().encode(text)),
  };
  const { content, version } = file.formula;
  const name = sheetFileName('file', [content.code, content.name, `version ${version.number}`]);
  return { stream: zipped([contents, ...all], context.now()), fileName: name.replace(/pdf$/, 'zip') };
}
