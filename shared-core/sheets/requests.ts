import { z } from 'zod';
import { calculationRequest } from '../calculators/calculation-request';
import { TERM_KEYS } from '../glossary/glossary';
import { benchState } from '../emulsions/bench/bench-state';
import { ALLERGEN_RULES } from '../labelling/allergens';
import { LABEL_FORMS } from '../labelling/substance-names';
import { id } from '../record/id';
import { fold } from '../quantities/fold';
import { PAPER_SIZES } from '../settings/settings';
import { FILE_PARTS } from './product-file/file-parts';

/** What every request for a sheet may say. */
const options = {
  /** Other paper than the library's setting, for this sheet only. */
  paperSize: z.enum(PAPER_SIZES).optional(),
  /** Print a sign that the typeface lacks as its code, "[U+65E5]", instead of being told of it first. */
  replaceUnprintable: z.boolean().default(false),
};

/** What the screens, the file names and the requests know of a kind of sheet. */
interface SheetFacts<Request extends z.ZodType> {
  /** As the head of its preview says. */
  title: string;
  /** What its files' names begin with. */
  fileWord: string;
  request: Request;
}

function sheet<Kind extends string, Shape extends z.ZodRawShape>(
  kind: Kind,
  title: string,
  fileWord: string,
  shape: Shape,
): SheetFacts<z.ZodObject<{ kind: z.ZodLiteral<Kind> } & Shape & typeof options>> {
  return { title, fileWord, request: z.object({ kind: z.literal(kind), ...shape, ...options }) };
}

/** Every kind of sheet. How one is read and set is its entry of the same name in the service. */
export const SHEETS = {
  material: sheet('material', 'Raw-material specification', 'specification', {
    materialId: id,
    /** It is printed or saved now, and not only looked at: it then bears the number of its issue. */
    issue: z.boolean().default(false),
  }),
  formula: sheet('formula', 'Formula sheet', 'formula', {
    formulaId: id,
    /** Null prints the draft as it stands. */
    versionId: id.nullable().default(null),
    forSharing: z.boolean().default(false),
    tradeNames: z.boolean().default(true),
  }),
  /** The ingredient list, the words of the label, and the limits that the formula was held against. */
  label: sheet('label', 'Label and law', 'label', {
    formulaId: id,
    versionId: id.nullable().default(null),
    form: z.enum(LABEL_FORMS).default('EU'),
    allergens: z.enum(ALLERGEN_RULES).default('2023'),
  }),
  /** For the safety assessor, with the natural origin of the formula. */
  exposure: sheet('exposure', 'Exposure and natural origin', 'exposure', {
    formulaId: id,
    versionId: id.nullable().default(null),
  }),
  /** A version's whole file, with bookmarks. */
  file: sheet('file', 'Product file', 'product file', { versionId: id }),
  /** One part of that file by itself. */
  part: sheet('part', 'Part of a product file', 'part', { versionId: id, part: z.enum(FILE_PARTS) }),
  batch: sheet('batch', 'Batch record', 'batch record', { batchId: id }),
  comparison: sheet('comparison', 'Comparison hand-out', 'comparison', {
    materialIds: z
      .array(id)
      .min(2, 'Choose at least two raw materials to compare.')
      .max(200, 'A hand-out can list 200 raw materials at most. Choose fewer.'),
  }),
  /** A hand-out of a calculation, computed anew from what went in. */
  calculation: sheet('calculation', 'Working', 'working', { calculation: calculationRequest }),
  /** The bench's hand-out; its numbers are worked out anew from the library. */
  working: sheet('working', 'Emulsion working', 'emulsion working', { bench: benchState }),
  /** Words of the trade for a class; all of them when none is named. */
  glossary: sheet('glossary', 'Glossary', 'glossary', {
    terms: z.array(z.enum(TERM_KEYS, 'This word is not in the glossary.')).default([]),
  }),
  trials: sheet('trials', 'Trial series', 'trial series', { seriesId: id }),
};
export type SheetKind = keyof typeof SHEETS;

type RequestSchema = (typeof SHEETS)[SheetKind]['request'];
const [first, ...others] = Object.values(SHEETS).map(({ request }): RequestSchema => request);

/** A sheet asked for, by what it is of. */
export const sheetRequest = z.discriminatedUnion(
  'kind',
  [first as RequestSchema, ...others],
  'Ask for a material, formula, label, exposure, file, part, batch, comparison, calculation, working, glossary or trials sheet.',
);
export type SheetRequest = z.infer<typeof sheetRequest>;
export type SheetRequestOf<Kind extends SheetKind> = z.infer<(typeof SHEETS)[Kind]['request']>;

/**
 * A file name that every system takes: plain letters, digits, hyphens and points, at most 80 before ".pdf".
 * @param parts what tells the sheet apart, such as the batch number and the formula's name
 */
export function sheetFileName(kind: SheetKind, parts: readonly string[]): string {
  const plain = [SHEETS[kind].fileWord, ...parts]
    .map((part) =>
      fold(part)
        .replace(/[^a-z0-9.]+/g, '-')
        .replace(/^[-.]+|[-.]+$/g, ''),
    )
    .filter(Boolean)
    .join('-');
  return `${plain.slice(0, 80).replace(/[-.]+$/, '')}.pdf`;
}
