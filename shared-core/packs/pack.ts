import { z } from 'zod';
import { sha256 } from '../materials/document';
import { nameText } from '../quantities/text';
import { id } from '../record/id';

/** The number of the format in which packs are written today. */
export const PACK_FORMAT = 1;
export const PACK_ENDING = 'stillroom.zip';
export const MANIFEST_FILE = 'pack.json';
export const LIBRARY_DOCUMENT_FILE = 'library.json';
export const SCHEMA_FILE = 'schema.json';
const ATTACHMENT_FILE = /^attachments\/[0-9a-f]{64}$/;

export const attachmentFile = (sha: string): string => `attachments/${sha}`;
export const isPackFile = (path: string): boolean =>
  [MANIFEST_FILE, LIBRARY_DOCUMENT_FILE, SCHEMA_FILE].includes(path) || ATTACHMENT_FILE.test(path);

/** The first page of a pack: what it holds, and the hash of every file in it. */
export const packManifest = z.object({
  stillroom: z.literal('pack'),
  format: z.int().min(1),
  title: z.string(),
  madeAt: z.iso.datetime(),
  by: z.string(),
  library: z.object({ id: z.string(), name: z.string() }),
  files: z.array(z.object({ path: z.string().refine(isPackFile), sha256, bytes: z.int().min(0) })),
  /** The SHA-256 of all of the above, in its canonical text: a change of any file changes it. */
  seal: sha256,
});
export type PackManifest = z.infer<typeof packManifest>;

/** What is asked for of a pack, or of a document of a part of the library. */
export const packRequest = z.object({
  title: nameText('what it is called', 80),
  materials: z.array(id).max(20_000),
  formulas: z.array(id).max(20_000),
  /** Offers with their prices, and the papers that suppliers give. */
  withSuppliers: z.boolean(),
  /** Batches of the formulas, with what came of them. */
  withBatches: z.boolean(),
  format: z.enum(['pack', 'json']),
});
export type PackRequest = z.infer<typeof packRequest>;

/** What is left out of a material where its suppliers are: a state without these says nothing of them. */
export const WITHHELD_OF_MATERIALS: readonly string[] = ['offers', 'documents'];
