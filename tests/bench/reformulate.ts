import { formulaCost } from '@core/costing/formula-cost';
import { blankTarget, type FormulaContent } from '@core/formulas/formula';
import { blankProductFile } from '@core/formulas/product-file';
import { blankMarket } from '@core/products/market';
import type { Material } from '@core/materials/material';
import { demoLibrary } from '@core/demo/demo-library';
import { NO_LAW, type Law } from '@core/limits/law';
import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { reformulate } from '@core/reformulate/reformulate';
import { reformulateWish } from '@core/reformulate/wish';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { numberedId } from './library-generator';
import { figureFrom, timeOf, type BenchFigure } from './measure';
import { Seeded } from './seeded';

const KEPT = { revision: 1, createdAt: '2026-01-01T00:00:00.000Z', updatedAt: '2026-01-01T00:00:00.000Z' };

export function exampleLaw(): Law {
  const kept = <C extends object>(content: C, kind: number, at: number) => ({
    ...content,
    ...KEPT,
    id: numberedId(kind, at),
  });
  return {
    substances: starterSubstances().map((one, at) => kept(one, 7, at)),
    limits: STARTER_LIMITS.map((one, at) => kept(one, 8, at)),
  };
}

/** The demonstration's materials over and over, each a little dearer or cheaper, with another HLB and range. */
export function shelf(count: number, chance: Seeded): Material[] {
  const own = demoLibrary().materials.filter(
    ({ usage, offers, composition }) =>
      (usage?.maxPpm && offers.length > 0) || composition[0]?.inci === 'Aqua',
  );
  return Array.from({ length: count }, (_, at): Material => {
    const like = own[at % own.length] as Material;
    const by = 0.5 + chance.next();
    const { hlb } = like.figures;
    return {
      ...like,
      id: numberedId(9, at),
      tradeName: `${like.tradeName} ${at}`,
      offers: like.offers.map((offer) => ({
        ...offer,
        priceMinor: offer.priceMinor === null ? null : Math.round(offer.priceMinor * by),
      })),
      figures: hlb?.value
        ? {
            ...like.figures,
            hlb: { ...hlb, low: null, high: null, value: Math.max(1, hlb.value + 2 * chance.next() - 1) },
          }
        : like.figures,
    };
  });
}

/** A cream of 40 lines within the ranges of its materials. */
export function cream(
  materials: readonly Material[],
  chance: Seeded,
): { content: FormulaContent; own: Material[] } {
  const water = materials.find(({ composition }) =>
    composition.every(({ inci }) => /^aqua$/i.test(inci)),
  ) as Material;
  const fitting = materials.filter(
    ({ charge, id }) => id !== water.id && charge !== 'cationic' && charge !== 'anionic',
  );
  const own: Material[] = [];
  for (let at = 0; own.length < 39; at += 1) own.push(fitting[(at * 7 + 3) % fitting.length] as Material);
  const line = (material: Material, at: number, ppm: number) => ({
    ...{ id: numberedId(10, at), materialId: material.id, ppm, toHundred: material === water, note: '' },
  });
  const ppmOf = ({ usage }: Material): number => {
    const [least, most] = [usage?.minPpm ?? 0, Math.min(usage?.maxPpm ?? 10_000, 40_000)];
    return Math.max(100, Math.round((least + chance.next() * 0.3 * (most - least)) / 100) * 100);
  };
  const lines = [line(water, 0, 0), ...own.map((one, at) => line(one, at + 1, ppmOf(one)))];
  const content: FormulaContent = {
    ...{ code: '', name: 'Forty lines', productType: 'o/w emulsion', use: 'leave-on', purpose: '' },
    market: { ...blankMarket(), kind: 'face cream', regions: ['EU'] },
    phases: [{ id: numberedId(11, 0), title: '', temperatureC: null, lines }],
    ...{ steps: [], target: blankTarget(), accepted: [], ...blankProductFile(), notes: '' },
  };
  return { content, own: [water, ...own] };
}

/** A formula of 40 lines against 500 candidates: 15 % cheaper and without one substance, with five alternatives. */
export async function benchReformulate(): Promise<BenchFigure[]> {
  const law = exampleLaw();
  const times: number[] = [];
  for (let seed = 1; seed <= 12; seed += 1) {
    const chance = new Seeded(seed);
    const candidates = shelf(500, chance);
    const { content, own } = cream(candidates, chance);
    const byId = Object.fromEntries(own.map((one) => [one.id, one]));
    const { perKgMinor } = formulaCost(content, byId, 'EUR');
    const out = own.find(({ functions }) => functions.includes('preservative'))?.composition[0]?.inci ?? '';
    const wish = reformulateWish.parse({ costAtMost: 0.85 * perKgMinor, withoutSubstances: [out] });
    const input = {
      content,
      materials: own,
      candidates,
      law,
      onDay: '2026-11-28',
      currency: 'EUR' as const,
      wish,
    };
    const took = await timeOf(async () => {
      const result = await reformulate(input, solveWithHighs);
      if (result.status !== 'found') {
        const free = await reformulate(
          { ...input, law: NO_LAW, wish: { ...wish, keepLaw: false } },
          solveWithHighs,
        );
        throw new Error(
          `The bench’s formula ${seed} has no answer: ${result.conflict.join('; ')} (${free.status})`,
        );
      }
    });
    // Warm: the engine compiles the solver in the background during its first runs.
    if (seed > 4) times.push(took);
  }
  return [
    figureFrom('reformulate, 40 lines, 500 candidates, five alternatives, warm', times, { atMost: 1000 }),
  ];
}
