import { createHash } from 'node:crypto';
import type { LibraryDocument } from '@core/exchange/document';
import { librarySchema } from '@core/exchange/schema';
import {
  attachmentFile,
  LIBRARY_DOCUMENT_FILE,
  MANIFEST_FILE,
  PACK_FORMAT,
  SCHEMA_FILE,
  type PackManifest,
} from '@core/packs/pack';
import { canonicalText } from '@core/record/canonical';
import { strToU8, zipSync } from 'fflate';

/** The earliest time that ZIP can hold: the same pack gives the same bytes. */
const ALWAYS = new Date(1980, 0, 1);
export const shaOf = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/** The hash of all that a manifest says. */
export function sealOf(manifest: Omit<PackManifest, 'seal'>): string {
  const { stillroom, format, title, madeAt, by, library, files } = manifest;
  return shaOf(canonicalText({ stillroom, format, title, madeAt, by, library, files }));
}

interface PackParts {
  document: LibraryDocument;
  title: string;
  by: string;
  /** The bytes of its attachments, by their hash. */
  attachments: ReadonlyMap<string, Uint8Array>;
}

/** A document with its attachments as one file: a ZIP with a manifest that names the hash of every part of it. */
export function writePack({ document, title, by, attachments }: PackParts): Uint8Array {
  const files: Record<string, Uint8Array> = {
    [LIBRARY_DOCUMENT_FILE]: strToU8(JSON.stringify(document, null, 1)),
    [SCHEMA_FILE]: strToU8(JSON.stringify(librarySchema(), null, 1)),
    ...Object.fromEntries([...attachments].map(([sha, bytes]) => [attachmentFile(sha), bytes])),
  };
  const manifest = {
    stillroom: 'pack' as const,
    format: PACK_FORMAT,
    title,
    madeAt: document.writtenAt,
    by,
    library: document.library,
    files: Object.entries(files).map(([path, bytes]) => ({
      path,
      sha256: shaOf(bytes),
      bytes: bytes.length,
    })),
  };
  const first = strToU8(JSON.stringify({ ...manifest, seal: sealOf(manifest) }, null, 1));
  return zipSync({ [MANIFEST_FILE]: first, ...files }, { mtime: ALWAYS, level: 6 });
}
