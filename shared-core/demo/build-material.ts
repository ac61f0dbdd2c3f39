import { blankMaterial, type Material, type MaterialContent } from '../materials/material';
import type { Offer } from '../materials/offer';
import type { KeepFrom } from '../materials/vocabulary';
import type { Currency } from '../quantities/money';
import { ppmFromPercent } from '../quantities/share';
import type { MakeId } from './demo-id';

/** Suppliers of the demonstration library; every one is invented. */
export const SUPPLIERS = {
  thrushgate: 'Thrushgate Works',
  quillbarrow: 'Quillbarrow Oleo',
  ombrelune: 'Ombrelune Matières',
  tarnholm: 'Vosk & Tarnholm',
  mirrowfen: 'Mirrowfen Supply',
} as const;

/** One pack at one price: supplier, kilograms, price of the pack, date, currency (euro unless said). */
type Pack = [keyof typeof SUPPLIERS, number, number, string, Currency?];

/** An INCI name with its per cent of the material, exact or as a range. */
type Part = [string, number] | [string, number, number];

/** A demonstration raw material as it is written down: per cent, kilograms and currency units, not ppm. */
export type DemoEntry = Partial<
  Pick<
    MaterialContent,
    | 'status'
    | 'functions'
    | 'phaseOfUse'
    | 'form'
    | 'consistency'
    | 'appearance'
    | 'charge'
    | 'architecture'
    | 'emulsionType'
    | 'body'
    | 'electrolyteTolerance'
    | 'needsNeutralising'
    | 'coldProcessable'
    | 'solubleIn'
    | 'origin'
    | 'certifiedOrganic'
    | 'figures'
    | 'storage'
    | 'hazards'
    | 'handling'
    | 'notes'
  >
> & {
  code: string;
  name: string;
  inci: string | Part[];
  /** Lowest, typical and highest per cent of the whole formula, as the invented supplier advises. */
  use?: [number, number, number];
  /** Per cent of the finished product, what it covers, and the text it comes from. */
  limit?: [number, string, string];
  /** Allergens in per cent of the material. */
  allergens?: Record<string, number>;
  packs?: Pack[];
};

/** Storage between two temperatures (°C), with months unopened and after opening. */
export function store(
  minC: number,
  maxC: number,
  shelfLifeMonths: number,
  afterOpeningMonths: number,
  ...keepFrom: KeepFrom[]
): MaterialContent['storage'] {
  return { minC, maxC, keepFrom, shelfLifeMonths, afterOpeningMonths };
}

function compositionOf(inci: string | Part[]): MaterialContent['composition'] {
  const parts: Part[] = typeof inci === 'string' ? [[inci, 100]] : inci;
  return parts.map(([name, low, high]) => ({
    inci: name,
    lowPpm: ppmFromPercent(low),
    highPpm: ppmFromPercent(high ?? low),
  }));
}

function offersOf(code: string, packs: Pack[]): Offer[] {
  return packs.map(([supplier, kilograms, price, date, currency]) => ({
    supplier: SUPPLIERS[supplier],
    itemCode: `${code}/${kilograms}`,
    packMg: Math.round(kilograms * 1_000_000),
    priceMinor: Math.round(price * 100),
    currency: currency ?? 'EUR',
    date,
  }));
}

function usageOf(range: [number, number, number] | undefined): MaterialContent['usage'] {
  if (!range) return null;
  const [minPpm, typicalPpm, maxPpm] = range.map(ppmFromPercent) as [number, number, number];
  const source = 'invented supplier advice (demonstration)';
  return { minPpm, typicalPpm, maxPpm, provenance: 'supplier', source };
}

/** Turns a written entry into a whole raw material with its identifier and moment of making. */
export function buildMaterial(entry: DemoEntry, makeId: MakeId, at: string): Material {
  const { code, name, inci, use, limit, allergens, packs, ...known } = entry;
  return {
    ...blankMaterial(name, ''),
    ...known,
    code,
    composition: compositionOf(inci),
    usage: usageOf(use),
    legalLimit: limit ? { ppm: ppmFromPercent(limit[0]), note: limit[1], source: limit[2] } : null,
    allergens: Object.entries(allergens ?? {}).map(([allergen, percent]) => ({
      inci: allergen,
      ppm: ppmFromPercent(percent),
    })),
    offers: offersOf(code, packs ?? []),
    id: makeId(`material:${code}`),
    revision: 1,
    createdAt: at,
    updatedAt: at,
  };
}
