import { z } from 'zod';
import { calculationRequest } from '../calculators/calculation-request';
import { benchState } from '../emulsions/bench/bench-state';
import { id } from '../record/id';
import { fold } from '../quantities/fold';
import { PAPER_SIZES } from '../settings/settings';

/** What every request for a sheet may say. */
const options = {
  /** Other paper than the library's setting, for this sheet only. */
  paperSize: z.enum(PAPER_SIZES).optional(),
  /** Print a sign that the typeface lacks as its code, "[U+65E5]", instead of being told of it first. */
  replaceUnprintable: z.boolean().default(false),
};

/** A sheet asked for, by what it is of. */
export const sheetRequest = z.discriminatedUnion(
  'kind',
  [
    z.object({ kind: z.literal('material'), materialId: id, ...options }),
    z.object({
      kind: z.literal('formula'),
      formulaId: id,
      /** Null prints the draft as it stands. */
      versionId: id.nullable().default(null),
      forSharing: z.boolean().default(false),
      tradeNames: z.boolean().default(true),
      ...options,
    }),
    z.object({ kind: z.literal('batch'), batchId: id, ...options }),
    z.object({
      kind: z.literal('comparison'),
      materialIds: z
        .array(id)
        .min(2, 'Choose at least two raw materials to compare.')
        .max(200, 'A hand-out can list 200 raw materials at most. Choose fewer.'),
      ...options,
    }),
    /** A hand-out of a calculation, computed anew from what went in. */
    z.object({ kind: z.literal('calculation'), calculation: calculationRequest, ...options }),
    /** The bench's hand-out; its numbers are worked out anew from the library. */
    z.object({ kind: z.literal('working'), bench: benchState, ...options }),
    z.object({ kind: z.literal('trials'), seriesId: id, ...options }),
  ],
  'Ask for a material, formula, batch, comparison, calculation, working or trials sheet.',
);
export type SheetRequest = z.infer<typeof sheetRequest>;
export type SheetKind = SheetRequest['kind'];

const KIND_NAMES: Record<SheetKind, string> = {
  material: 'specification',
  formula: 'formula',
  batch: 'batch record',
  comparison: 'comparison',
  calculation: 'working',
  working: 'emulsion working',
  trials: 'trial series',
};

/**
 * A file name that every system takes: plain letters, digits, hyphens and points, at most 80 before ".pdf".
 * @param parts what tells the sheet apart, such as the batch number and the formula's name
 */
export function sheetFileName(kind: SheetKind, parts: readonly string[]): string {
  const plain = [KIND_NAMES[kind], ...parts]
    .map((part) =>
      fold(part)
        .replace(/[^a-z0-9.]+/g, '-')
        .replace(/^[-.]+|[-.]+$/g, ''),
    )
    .filter(Boolean)
    .join('-');
  return `${plain.slice(0, 80).replace(/[-.]+$/, '')}.pdf`;
}
