import { readDocumentText, type LibraryDocument } from '@core/exchange/document';
import {
  attachmentFile,
  isPackFile,
  LIBRARY_DOCUMENT_FILE,
  MANIFEST_FILE,
  PACK_FORMAT,
  packManifest,
  type PackManifest,
} from '@core/packs/pack';
import { Problem } from '@core/problems/problem';
import { Archive, type Limits } from '@core/tables/xlsx/archive';
import { readDirectory } from '@core/tables/xlsx/zip-directory';
import { z } from 'zod';
import { sealOf, shaOf } from './write-pack';

const MB = 1_000_000;
const LIMITS: Limits = { part: 400 * MB, all: 2_000 * MB, large: 10 * MB, packedTimes: 250 };

const refused = (title: string, why: string, advice: string): Problem =>
  new Problem({ code: 'invalid-input', title, advice, facts: { why } });
const damaged = (why: string): Problem =>
  refused(
    'This pack is damaged and cannot be read.',
    why,
    'Ask for it to be sent again. Nothing was read from it, and nothing was changed.',
  );
const altered = (why: string): Problem =>
  refused(
    'This pack was altered after it was made.',
    why,
    'It is not what its maker saved. Ask for it to be sent again. Nothing was read from it, and nothing was changed.',
  );

/** Whether bytes begin as a ZIP file does (APPNOTE 4.3.7). */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes.length > 3 && bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2]! < 9;

/** What a spreadsheet's archive would be told is told of a pack. */
function asPack<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    throw error.facts.why === undefined ? damaged(error.message) : damaged(String(error.facts.why));
  }
}

function bytesOf(archive: Archive, path: string): Uint8Array {
  const pieces: Uint8Array[] = [];
  // What is handed over may be used again.
  asPack(() => archive.unpack(path, (piece) => void pieces.push(piece.slice())));
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

function refuseStrangePaths(bytes: Uint8Array): void {
  for (const { name } of asPack(() => readDirectory(bytes))) {
    if (isPackFile(name)) continue;
    const leaves = name.includes('..') || /^[/\\]|^[a-z]:/i.test(name);
    throw refused(
      leaves
        ? 'This pack names a file outside of its own folder.'
        : 'This pack holds a file that no pack has.',
      name,
      'Do not use it if it comes from somebody whom you do not know. Otherwise ask for it to be sent again. Nothing was read from it.',
    );
  }
}

function manifestOf(archive: Archive): PackManifest {
  if (!archive.has(MANIFEST_FILE)) throw damaged('It has no first page.');
  let read: unknown;
  try {
    read = JSON.parse(textOf(bytesOf(archive, MANIFEST_FILE)));
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw damaged('Its first page cannot be read.');
  }
  const head = z.object({ stillroom: z.literal('pack'), format: z.int() }).safeParse(read);
  if (!head.success) throw damaged('It does not say that it is a pack.');
  if (head.data.format > PACK_FORMAT)
    throw new Problem({
      code: 'library-newer',
      title: 'This pack was made by a newer version of Stillroom.',
      advice: 'Open it with that version or a later one. Nothing was changed.',
      facts: { format: head.data.format, known: PACK_FORMAT },
    });
  const manifest = packManifest.safeParse(read);
  if (!manifest.success) throw damaged('Its first page is not whole.');
  if (sealOf(manifest.data) !== manifest.data.seal) throw altered('The seal is not that of what it says.');
  return manifest.data;
}

/** A pack that was read, and is what its manifest says. */
export interface ReadPack {
  manifest: PackManifest;
  document: LibraryDocument;
  /** The bytes of an attachment in it; undefined where it holds none of that hash. */
  attachment(sha: string): Uint8Array | undefined;
}

/** @throws Problem for what is no pack, is damaged, altered, or from a newer version */
export function readPack(bytes: Uint8Array): ReadPack {
  refuseStrangePaths(bytes);
  const archive = asPack(() => new Archive(bytes, LIMITS));
  const manifest = manifestOf(archive);
  const named = new Set(manifest.files.map(({ path }) => path));
  for (const { name } of readDirectory(bytes))
    if (name !== MANIFEST_FILE && !named.has(name)) throw altered(`${name} is not named by it.`);
  const parts = new Map<string, Uint8Array>();
  for (const { path, sha256, bytes: length } of manifest.files) {
    if (!archive.has(path)) throw altered(`${path} is missing.`);
    const part = bytesOf(archive, path);
    if (part.length !== length || shaOf(part) !== sha256) throw altered(`${path} is not as it was.`);
    if (path === attachmentFile(sha256) || !path.startsWith('attachments/')) parts.set(path, part);
    else throw altered(`${path} is not what its name says.`);
  }
  const document = parts.get(LIBRARY_DOCUMENT_FILE);
  if (!document) throw damaged('It holds no library.');
  return {
    manifest,
    document: readDocumentText(textOf(document)),
    attachment: (sha) => parts.get(attachmentFile(sha)),
  };
}
