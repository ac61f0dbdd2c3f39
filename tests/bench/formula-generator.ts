import { blankProductFile } from '@core/formulas/product-file';
import { blankMarket } from '@core/products/market';
import { blankTarget, PRODUCT_TYPES, USES, type Formula, type FormulaPhase } from '@core/formulas/formula';
import { WHOLE_PPM } from '@core/quantities/share';
import { materialId, numberedId } from './library-generator';
import { Seeded } from './seeded';

const NAMES =
  'Day Night Hand Body Foot Barrier Rich Light Rose Oat Calm Spring Winter Classroom Trial Soft Daily Repair'.split(
    ' ',
  );
const KINDS = 'cream milk gel-cream lotion balm conditioner cleansing-milk serum mask'.split(' ');
const PHASES: [string, number | null][] = [
  ['Water phase', 75],
  ['Oil phase', 75],
  ['Cool-down', 40],
];

/** Counts the ids given out inside one formula, so that they repeat with the seed. */
class Numbering {
  private last: number;
  constructor(formulaIndex: number) {
    this.last = formulaIndex * 1000;
  }
  next(): string {
    return numberedId(3, this.last++);
  }
}

function phasesOf(chance: Seeded, materials: number, ids: Numbering, lines: number | null): FormulaPhase[] {
  let left = WHOLE_PPM;
  return PHASES.map(([title, temperatureC], phaseIndex) => ({
    id: ids.next(),
    title,
    temperatureC,
    lines: Array.from(
      { length: lines === null ? chance.whole(2, 9) : Math.ceil((lines - phaseIndex) / PHASES.length) },
      (_, lineIndex) => {
        const toHundred = phaseIndex === 0 && lineIndex === 0;
        const ppm = toHundred ? 0 : Math.min(chance.whole(1, 500) * 100, Math.floor(left / 2));
        left -= ppm;
        return {
          id: ids.next(),
          materialId: materialId(chance.whole(0, materials - 1)),
          ppm,
          toHundred,
          note: '',
        };
      },
    ),
  }));
}

/** A maker's formulas over the first `materials` generated materials; the same seed gives the same formulas. @param lines of each; any number when null */
export function* generateFormulas(
  count: number,
  materials: number,
  seed = 2,
  lines: number | null = null,
): Generator<Formula> {
  const chance = new Seeded(seed);
  for (let index = 0; index < count; index++) {
    const ids = new Numbering(index);
    const phases = phasesOf(chance, materials, ids, lines);
    yield {
      id: numberedId(2, index),
      code: `F-${String(index + 1).padStart(5, '0')}`,
      name: `${chance.pick(NAMES)} ${chance.pick(NAMES).toLowerCase()} ${chance.pick(KINDS)} ${index + 1}`,
      productType: chance.pickSkewed(PRODUCT_TYPES),
      use: chance.pickSkewed(USES),
      purpose: '',
      market: blankMarket(),
      phases,
      steps: phases.map((phase) => ({
        id: ids.next(),
        phaseIds: [phase.id],
        instruction: 'Heat to temperature while stirring until all is melted and even.',
        temperatureC: phase.temperatureC,
        speedRpm: chance.pick([null, 300, 800, 3000]),
        minutes: chance.pick([null, 5, 10, 20]),
        lookFor: 'An even, glossy mass',
        caution: '',
      })),
      target: blankTarget(),
      accepted: [],
      ...blankProductFile(),
      notes: '',
      archived: chance.chance(0.1),
      revision: chance.whole(1, 20),
      createdAt: '2024-06-01T09:00:00.000Z',
      updatedAt: '2025-06-01T09:00:00.000Z',
    };
  }
}
