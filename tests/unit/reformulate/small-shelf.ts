import type { FormulaContent, FormulaLine } from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import { NO_LAW, type Law } from '@core/limits/law';
import type { Figure, FigureKind } from '@core/materials/figure';
import type { Material, MaterialContent } from '@core/materials/material';
import type { Offer } from '@core/materials/offer';
import { reformulate, type Reformulation, type ReformulateResult } from '@core/reformulate/reformulate';
import { reformulateWish, type ReformulateWish } from '@core/reformulate/wish';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { content, figure, make, nextId, phase, type Row } from '../checks/build';

export interface Facts {
  /** Minor units per kg; none where left out. */
  cost?: number;
  supplier?: string;
  /** Usage range in %; none where left out. */
  use?: [least: number, most: number];
  origin?: number;
  parts?: Partial<Omit<MaterialContent, 'figures'>>;
  figures?: Partial<Record<FigureKind, Figure>>;
}

export const offer = (cost: number, supplier = 'Fenwick & Daughters'): Offer => ({
  ...{ supplier, itemCode: '', packMg: 1_000_000, priceMinor: cost },
  ...{ currency: 'EUR', date: '2026-01-01' },
});

/** An invented material over a real INCI name, with what reformulating asks of it. */
export function raw(
  name: string,
  inci: string | string[],
  functions: Material['functions'],
  { cost, supplier, use, origin, parts = {}, figures = {} }: Facts = {},
): Material {
  return make(name, inci, {
    functions,
    usage: use
      ? {
          ...{ minPpm: use[0] * 10_000, typicalPpm: null, maxPpm: use[1] * 10_000 },
          ...{ provenance: 'supplier', source: '' },
        }
      : null,
    offers: cost === undefined ? [] : [offer(cost, supplier)],
    figures: { ...(origin === undefined ? {} : { naturalOriginIndex: figure(origin) }), ...figures },
    ...parts,
  });
}

/** Adds a line of the material that fills up to 100 %. */
export function toHundred(formula: FormulaContent, material: Material): FormulaContent {
  const line: FormulaLine = { id: nextId(), materialId: material.id, ppm: 0, toHundred: true, note: '' };
  formula.phases[0]?.lines.push(line);
  return formula;
}

/** A formula of one phase: these shares, and water to 100 %. */
export function over(water: Material, rows: Row[], parts: Partial<FormulaContent> = {}): FormulaContent {
  return toHundred(content([phase(rows)], { productType: 'gel', ...parts }), water);
}

/** Asks for a reformulation of a formula whose materials are all among these. */
export async function ask(
  formula: FormulaContent,
  shelf: readonly Material[],
  wish: Partial<ReformulateWish>,
  law: Law = NO_LAW,
): Promise<ReformulateResult> {
  const ids = new Set(formulaLines(formula).map(({ materialId }) => materialId));
  return reformulate(
    {
      content: formula,
      materials: shelf.filter(({ id }) => ids.has(id)),
      candidates: shelf,
      ...{ law, onDay: '2026-11-28', currency: 'EUR' },
      wish: reformulateWish.parse({ alternatives: 0, ...wish }),
    },
    solveWithHighs,
  );
}

/** The nearest answer; throws where there is none. */
export async function best(...asked: Parameters<typeof ask>): Promise<Reformulation> {
  const result = await ask(...asked);
  if (result.status !== 'found') throw new Error(`None: ${result.conflict.join('; ')}`);
  return result.best;
}

/** The share of a material in an answer, %. */
export const shareOf = ({ shares }: Reformulation, { id }: Material): number =>
  (shares.find(({ materialId }) => materialId === id)?.is ?? 0) / 10_000;
