import type { Figure, Figures } from '@core/materials/figure';
import { blankMaterial, type Material } from '@core/materials/material';
import type { InciPart } from '@core/materials/composition';
import type { Offer } from '@core/materials/offer';
import { PROVENANCES, STATUSES } from '@core/materials/vocabulary';
import { WHOLE_PPM } from '@core/quantities/share';
import { FAMILIES, type Family } from './families';
import { Seeded } from './seeded';
import { ENDS, HOUSES, SHELF_NOTES, STEMS } from './words';

const FAMILY_DRAW: Family[] = FAMILIES.flatMap((family) => Array<Family>(family.weight).fill(family));

/** An identifier of the form of a UUIDv7, the same for the same number. */
export function numberedId(kind: number, number: number): string {
  const hex = number.toString(16).padStart(12, '0');
  return `0190${kind.toString(16).padStart(4, '0')}-0000-7000-8000-${hex}`;
}

export function materialId(index: number): string {
  return numberedId(1, index);
}

function suppliers(chance: Seeded): string[] {
  return Array.from(
    { length: 120 },
    () => `${chance.pick(STEMS)}${chance.pick(ENDS)} ${chance.pick(HOUSES)}`,
  );
}

function composition(chance: Seeded, family: Family): InciPart[] {
  const names = chance.some(
    family.inci,
    Math.min(family.most, 1 + Math.floor(chance.next() ** 2 * family.most)),
  );
  if (names.length === 1) return [{ inci: names[0]!, lowPpm: WHOLE_PPM, highPpm: WHOLE_PPM }];
  const cuts = names.map(() => 1 + chance.whole(1, 100) ** 1.5);
  const whole = cuts.reduce((sum, cut) => sum + cut, 0);
  const ranged = chance.chance(0.4);
  return names.map((inci, i) => {
    // Shares end on whole per cent, as data sheets state them; what is over stays unstated.
    const ppm = Math.floor(((cuts[i] ?? 0) / whole) * 100) * 10_000;
    return ranged
      ? { inci, lowPpm: Math.floor(ppm * 0.8), highPpm: Math.min(WHOLE_PPM, Math.ceil(ppm * 1.2)) }
      : { inci, lowPpm: ppm, highPpm: ppm };
  });
}

function figureWithin(chance: Seeded, [low, high]: [number, number]): Figure {
  const rounded = (value: number): number => Math.round(value * 100) / 100;
  const value = rounded(low + chance.next() * (high - low));
  const spread = chance.chance(0.3) ? 0.05 : null;
  return {
    low: spread && rounded(value * (1 - spread)),
    value,
    high: spread && rounded(value * (1 + spread)),
    provenance: chance.pickSkewed(PROVENANCES),
    source: chance.chance(0.5) ? 'data sheet' : '',
  };
}

function figuresOf(chance: Seeded, family: Family): Figures {
  const figures: Figures = {};
  if (family.hlb && chance.chance(0.8)) figures.hlb = figureWithin(chance, family.hlb);
  if (family.requiredHlb && chance.chance(0.6))
    figures.requiredHlbOw = figureWithin(chance, family.requiredHlb);
  if (family.melting && chance.chance(0.7)) figures.meltingPoint = figureWithin(chance, family.melting);
  if (chance.chance(0.4)) figures.density = figureWithin(chance, [0.85, 1.3]);
  if (family.phase === 'water' && chance.chance(0.5)) figures.workingPh = figureWithin(chance, [4, 8]);
  return figures;
}

function offersOf(chance: Seeded, houses: string[]): Offer[] {
  const count = Math.floor(chance.next() ** 1.5 * 4);
  const first = chance.pickSkewed(houses);
  return Array.from({ length: count }, (_, i) => ({
    supplier: i === 0 || chance.chance(0.7) ? first : chance.pickSkewed(houses),
    itemCode: chance.chance(0.6) ? `${chance.whole(1000, 99_999)}` : '',
    packMg: chance.pick([1, 5, 25, 180]) * 1_000_000,
    priceMinor: Math.round(400 * 10 ** (chance.next() * 2.5)),
    currency: chance.chance(0.85) ? 'EUR' : chance.pick(['GBP', 'USD', 'CHF']),
    date: `20${chance.whole(19, 25)}-${String(chance.whole(1, 12)).padStart(2, '0')}-${String(chance.whole(1, 28)).padStart(2, '0')}`,
  }));
}

function sentence(chance: Seeded, most: number): string {
  const length = Math.floor(chance.next() ** 2 * most);
  return Array.from({ length }, () => chance.pickSkewed(SHELF_NOTES)).join(' ');
}

function tradeName(chance: Seeded): string {
  const name = `${chance.pick(STEMS)}${chance.pick(ENDS)}`;
  const grade = chance.pick(['', 'S', 'CS', 'PF', 'Mild', 'Éclat', 'MB', 'Green', 'Ö', 'Plus']);
  return [name, grade, chance.chance(0.6) ? String(chance.whole(1, 400)) : ''].filter(Boolean).join(' ');
}

/** Leaves a quarter of what could be known open, as on a real shelf. */
function mostly<T>(chance: Seeded, value: T): T | null {
  return chance.chance(0.75) ? value : null;
}

function materialOf(chance: Seeded, index: number, houses: string[]): Material {
  const family = chance.pick(FAMILY_DRAW);
  const parts = composition(chance, family);
  const day = String(chance.whole(1, 28)).padStart(2, '0');
  const status = chance.chance(0.9) ? 'in use' : chance.pick(STATUSES.slice(1));
  return {
    ...blankMaterial(tradeName(chance), parts[0]!.inci),
    id: materialId(index),
    revision: chance.whole(1, 30),
    createdAt: `2024-${String(chance.whole(1, 12)).padStart(2, '0')}-${day}T09:00:00.000Z`,
    updatedAt: `2025-${String(chance.whole(1, 12)).padStart(2, '0')}-${day}T${String(chance.whole(8, 18)).padStart(2, '0')}:15:00.000Z`,
    code: chance.chance(0.8) ? `RM-${String(index).padStart(6, '0')}` : '',
    status,
    composition: parts,
    functions: family.functions,
    phaseOfUse: mostly(chance, family.phase),
    usage: mostly(chance, {
      minPpm: null,
      typicalPpm: Math.round(family.usagePpm / 2),
      maxPpm: family.usagePpm,
      provenance: 'supplier',
      source: '',
    }),
    form: mostly(chance, chance.pickSkewed(family.forms)),
    consistency: mostly(chance, family.consistency),
    appearance: sentence(chance, 8),
    charge: family.charge ?? null,
    architecture: family.architecture ?? null,
    emulsionType: family.emulsionType ?? null,
    origin: mostly(chance, chance.pickSkewed(family.origins)),
    figures: figuresOf(chance, family),
    storage: {
      minC: chance.chance(0.5) ? 5 : null,
      maxC: chance.chance(0.5) ? 25 : null,
      keepFrom: family.keepFrom.filter(() => chance.chance(0.6)),
      shelfLifeMonths: mostly(chance, chance.pick([12, 24, 36])),
      afterOpeningMonths: null,
    },
    handling: sentence(chance, 20),
    offers: offersOf(chance, houses),
    notes: chance.chance(0.5) ? sentence(chance, 60) : '',
  };
}

/**
 * A maker's raw materials, one after another: named in invented words over real INCI names, with the gaps,
 * ranges and skew of a real shelf. The same seed and count give the same materials.
 */
export function* generateMaterials(count: number, seed = 1): Generator<Material> {
  const chance = new Seeded(seed);
  const houses = suppliers(chance);
  for (let index = 0; index < count; index++) yield materialOf(chance, index, houses);
}
