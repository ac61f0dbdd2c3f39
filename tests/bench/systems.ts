import type { SystemWishInput } from '@core/emulsions/systems/wish';
import { blankMaterial, type Material } from '@core/materials/material';
import { materials as shelf } from '@db/materials/materials';
import { openBenchLibrary } from './bench-library';
import { generatedCandidates } from './emulsifiers';
import { filledLibrary } from './fill-library';
import { materialId } from './library-generator';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';

const DATE = '2026-01-01T00:00:00.000Z';
const FIGURE = { low: null, high: null, provenance: 'supplier', source: 'generated' } as const;

function stamped(index: number) {
  return { id: materialId(index), revision: 1, createdAt: DATE, updatedAt: DATE };
}

/** A library of which one in five is an emulsifier; the others are oils. */
export function emulsionLibrary(count: number, seed: number): Material[] {
  const candidates = generatedCandidates(Math.floor(count / 5), seed);
  const emulsifiers = candidates.map((one, index): Material => ({
    ...blankMaterial(one.name, one.name),
    ...stamped(index),
    functions: ['emulsifier'],
    charge: one.charge,
    architecture: one.architecture,
    emulsionType: one.emulsionType,
    consistency: one.character === 'waxy' ? 'waxy' : 'oily',
    figures: one.hlb === null ? {} : { hlb: { ...FIGURE, value: one.hlb } },
    usage: {
      minPpm: one.minPercent * 10_000,
      typicalPpm: null,
      maxPpm: one.maxPercent * 10_000,
      provenance: 'supplier',
      source: '',
    },
    offers:
      one.costPerKg === null
        ? []
        : [
            {
              supplier: 'Generated',
              itemCode: '',
              packMg: 1_000_000,
              priceMinor: one.costPerKg,
              currency: 'EUR',
              date: '2026-01-01',
            },
          ],
  }));
  const others = Array.from({ length: count - emulsifiers.length }, (_, index): Material => ({
    ...blankMaterial(`Oil ${index}`, 'Paraffinum Liquidum'),
    ...stamped(emulsifiers.length + index),
    functions: ['emollient'],
    figures: { requiredHlbOw: { ...FIGURE, value: 8 + (index % 5) }, requiredHlbWo: { ...FIGURE, value: 4 } },
  }));
  return [...emulsifiers, ...others];
}

const WISHES: Omit<SystemWishInput, 'currency'>[] = (['o/w', 'w/o', 'cationic o/w'] as const).flatMap(
  (emulsionType) =>
    (['temperate', 'both'] as const).map((climate) => ({
      ...{ emulsionType, climate, feel: 'cream' as const, ph: 5.5, electrolyte: 'low' as const, origins: [] },
    })),
);
/** Asked this often before it is measured: the first questions are compiled while they are answered. */
const WARM_UP = 2;

/** Ranking systems over 5,000 materials, 1,000 of them emulsifiers: from the question to the answer of the service. */
export async function benchSystems({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const materials = emulsionLibrary(5000, 1);
  const { folder } = await filledLibrary((engine) => {
    for (const each of materials) shelf.insert(engine, each);
  });
  const library = await openBenchLibrary(folder);
  const oils = materials.slice(-4).map(({ id }) => ({ materialId: id, percent: 5 }));
  const times: number[] = [];
  try {
    for (let round = 0; round < WARM_UP + (quick ? 8 : 20); round += 1)
      for (const wish of WISHES) {
        const body = JSON.stringify({ wish, oils });
        const asked = { method: 'POST', headers: { 'content-type': 'application/json' }, body };
        const took = await timeOf(async () => {
          const answer = await library.service.request('/api/emulsions/systems', asked);
          const text = await answer.text();
          if (answer.status !== 200) throw new Error(`The ranking answered ${answer.status}: ${text}`);
        });
        if (round >= WARM_UP) times.push(took);
      }
  } finally {
    await library.discard();
  }
  return [figureFrom('systems ranked over 5,000 materials, 1,000 emulsifiers', times, { atMost: 40 })];
}
