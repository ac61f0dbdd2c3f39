import { z } from 'zod';
import { batch } from '../batches/batch';
import { batchDocumentEntry } from '../batches/document';
import { DECISIONS } from '../formulas/decision';
import { sha256 } from '../materials/document';
import { Problem } from '../problems/problem';
import { id } from '../record/id';
import { settings } from '../settings/settings';

/** The number of the format in which documents are written today. */
export const DOCUMENT_FORMAT = 1;

const moment = z.iso.datetime();
const hash = sha256.describe('The SHA-256 of a state: of its kind, format, record and canonical content.');
const content = z.record(z.string(), z.unknown());

/** A record as it is now. What each kind holds is described by the fields of its noun. */
export const exchangedRecord = z.object({
  kind: z.string().describe('The kind of record, such as material or formula.'),
  id,
  revision: z.int().min(1),
  createdAt: moment,
  updatedAt: moment,
  format: z.int().min(1).describe('The number of the format of the content.'),
  state: hash,
  /** Every state that it is known to have left, oldest first. */
  past: z.array(hash).describe('The states that it has been in before, oldest first.'),
  content,
});
export type ExchangedRecord = z.infer<typeof exchangedRecord>;

const exchangedState = z.object({
  hash,
  kind: z.string(),
  record: z.string(),
  format: z.int().min(1),
  content,
});
export type ExchangedState = z.infer<typeof exchangedState>;

const doing = { by: z.string(), library: z.string(), why: z.string() };
const exchangedHistory = z.object({
  kind: z.string(),
  record: z.string(),
  entries: z.array(z.object({ state: hash, at: z.string(), ...doing })),
  sitting: z.object({ ...doing, began: z.string() }).nullable(),
});
export type ExchangedHistory = z.infer<typeof exchangedHistory>;

const exchangedIssue = z.object({
  kind: z.string(),
  record: z.string(),
  n: z.int().min(1),
  state: hash,
  at: z.string(),
  by: z.string(),
});

const exchangedVersion = z.object({
  id,
  formulaId: id,
  number: z.int().min(1),
  recordedAt: z.string(),
  recordedBy: z.string(),
  reason: z.string(),
  formula: hash,
  materials: z.array(z.object({ state: hash, revision: z.int() })),
  decisions: z.array(
    z.object({
      decision: z.enum(DECISIONS),
      by: z.string(),
      on: z.string(),
      reason: z.string(),
      at: z.string(),
    }),
  ),
});
export type ExchangedVersion = z.infer<typeof exchangedVersion>;

const exchangedBatch = batch.extend({
  outcomes: z.array(
    z.object({
      finishedOn: z.string(),
      obtainedMg: z.int().positive(),
      unitsFilled: z.int().min(0).nullable(),
      by: z.string(),
      remarks: z.string(),
      at: z.string(),
    }),
  ),
  documents: z
    .array(batchDocumentEntry)
    .default([])
    .describe('All that was written down of its photos and documents; of each, the highest revision holds.'),
});
export type ExchangedBatch = z.infer<typeof exchangedBatch>;

/** A library, or a part of one, as a document that stands by itself. Attached files are named by their SHA-256. */
export const libraryDocument = z.object({
  stillroom: z.literal('library'),
  format: z.int().min(1).describe('The number of the format of this document.'),
  writtenAt: moment,
  library: z.object({ id: z.string(), name: z.string() }),
  /** Fields that were left out on purpose, by kind: they say nothing, not that there is nothing. */
  withheld: z.record(z.string(), z.array(z.string())),
  settings: settings.nullable(),
  records: z.array(exchangedRecord),
  history: z.array(exchangedHistory),
  states: z.array(exchangedState),
  versions: z.array(exchangedVersion),
  batches: z.array(exchangedBatch),
  issues: z
    .array(exchangedIssue)
    .default([])
    .describe('The states that were issued on paper, each with the number of its issue.'),
  numbers: z.array(z.object({ name: z.string(), last: z.int().min(0) })),
  attachments: z.array(z.object({ sha256, of: z.string() })),
});
export type LibraryDocument = z.infer<typeof libraryDocument>;

const heading = z.object({ stillroom: z.literal('library'), format: z.int() });

/**
 * Reads a document's JSON.
 * @throws Problem library-newer for a format from the future, invalid-input for what is no such document
 */
export function readDocumentText(text: string): LibraryDocument {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch (cause) {
    throw notOurs('It is not JSON, or was cut short.', cause);
  }
  const head = heading.safeParse(read);
  if (!head.success) throw notOurs('It does not say that it is a Stillroom library.');
  if (head.data.format > DOCUMENT_FORMAT)
    throw new Problem({
      code: 'library-newer',
      title: 'This file was written by a newer version of Stillroom.',
      advice: 'Open it with that version or a later one. Nothing was changed.',
      facts: { format: head.data.format, known: DOCUMENT_FORMAT },
    });
  const found = libraryDocument.safeParse(read);
  if (found.success) return found.data;
  const [issue] = found.error.issues;
  throw notOurs(`${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}`);
}

function notOurs(why: string, cause?: unknown): Problem {
  return new Problem(
    {
      code: 'invalid-input',
      title: 'This file cannot be read as a Stillroom library or pack.',
      advice: `${why} Choose a file that Stillroom has saved, or ask for it to be sent again. Nothing was changed.`,
    },
    { cause },
  );
}
