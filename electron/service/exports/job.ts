import { savedTable, type SavedTable, type TableFormat } from '@core/exports/saved-table';
import type { LibraryDocument } from '@core/exchange/document';
import type { Region } from '@core/locale/numbers';
import type { PackRequest } from '@core/packs/pack';
import { readDocument, type DocumentParts } from '@db/exchange/read-document';
import { Attachments } from '@db/library/attachments/attachments';
import { nodeFileSystem } from '@db/library/file/file-system';
import { openBytes } from '@db/library/file/library-bytes';
import { partOf } from '@db/packs/part-of';
import { writePack } from '@db/packs/write-pack';
import { inPieces } from './in-pieces';

/** A table, a library or a part of one, to be written as a file. */
export type ExportJob =
  | { kind: 'table'; tables: SavedTable[]; format: TableFormat; region: Region }
  | ({ kind: 'document' } & OfLibrary)
  | ({ kind: 'pack'; title: string; by: string; folder: string } & OfLibrary);

interface OfLibrary {
  /** The library as the bytes of its file. */
  library: Uint8Array;
  parts: DocumentParts;
  /** What is wanted of it; null for all. */
  request: PackRequest | null;
}

async function documentOf({ library, parts, request }: OfLibrary): Promise<LibraryDocument> {
  const { engine } = await openBytes(library, Number.MAX_SAFE_INTEGER, { known: true, given: true });
  try {
    const whole = await inPieces(readDocument(engine, parts));
    return request ? partOf(whole, request) : whole;
  } finally {
    engine.close();
  }
}

/** The attached files that a document names, as far as they are there and whole. */
async function attachmentsOf(
  { attachments }: LibraryDocument,
  folder: string,
): Promise<Map<string, Uint8Array>> {
  const kept = new Attachments(
    nodeFileSystem,
    folder,
    () => undefined,
    () => undefined,
  );
  const found = new Map<string, Uint8Array>();
  for (const { sha256 } of attachments) {
    const bytes = await kept.get(sha256).catch(() => undefined);
    if (bytes) found.set(sha256, bytes);
  }
  return found;
}

/** Writes it, in this thread. @throws Problem where it does not fit what spreadsheets hold */
export async function writeExport(job: ExportJob): Promise<Uint8Array> {
  switch (job.kind) {
    case 'table':
      return savedTable(job.tables, job.format, job.region);
    case 'document':
      return new TextEncoder().encode(JSON.stringify(await documentOf(job), null, 1));
    case 'pack': {
      const document = await documentOf(job);
      const { title, by } = job;
      return writePack({ document, title, by, attachments: await attachmentsOf(document, job.folder) });
    }
  }
}
