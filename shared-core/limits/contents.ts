import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';
import { namesWithin, saysNano } from '../substances/names';
import type { Substance } from '../substances/substance';
import type { SubstanceIndex } from '../substances/substance-index';

/** A line that brings something: its material at a share, in ppm of the formula. */
export interface Dosed {
  lineId: string;
  material: Material;
  ppm: number;
}

/** An amount in ppm of the formula: the least and most that the suppliers' ranges allow, and the middle. */
export interface Amount {
  low: number;
  used: number;
  high: number;
}

/** What one line brings of a substance. */
export interface Bringing extends Amount {
  lineId: string;
  material: Material;
  /** The name that stands in the material's composition. */
  written: string;
  nano: boolean;
}

/** A substance in a formula, over all lines. */
export interface Present {
  substance: Substance;
  parts: Bringing[];
}

/** A name that no substance of the table goes by: it is not counted against any limit. */
export interface FreeText {
  written: string;
  high: number;
  lineIds: string[];
  /** The substances that it could mean, where there are several. */
  couldMean: readonly Substance[];
}

/** Everything that a formula holds, by substance. */
export interface Contents {
  present: ReadonlyMap<string, Present>;
  freeText: FreeText[];
}

type Share = Amount & { written: string; nano: boolean };

/** What of a material each name says, a name that lists several standing for each of them from none to all. */
function namedShares(material: Material, index: SubstanceIndex): Share[] {
  return material.composition.flatMap(({ inci, lowPpm, highPpm }): Share[] => {
    const whole = { low: lowPpm, used: (lowPpm + highPpm) / 2, high: highPpm };
    const within = index.find(inci) ? [inci] : namesWithin(inci);
    if (within.length < 2) return [{ ...whole, written: inci, nano: saysNano(inci) }];
    return within.map((written) => ({
      low: 0,
      used: whole.used / within.length,
      high: whole.high,
      written,
      nano: saysNano(written),
    }));
  });
}

const larger = (a: Amount, b: Amount): Amount => ({
  low: Math.max(a.low, b.low),
  used: Math.max(a.used, b.used),
  high: Math.max(a.high, b.high),
});
/** Two names of one substance in one material, whose ranges may overlap: together they are the whole at most. */
const ofOne = (a: Amount, b: Amount): Amount => {
  const { low, used, high } = sum(a, b);
  return { low: Math.min(low, WHOLE_PPM), used: Math.min(used, WHOLE_PPM), high: Math.min(high, WHOLE_PPM) };
};
const sum = (a: Amount, b: Amount): Amount => ({
  low: a.low + b.low,
  used: a.used + b.used,
  high: a.high + b.high,
});

interface OfMaterial {
  known: (Share & { substance: Substance })[];
  free: Share[];
}

/** The shares of a material by substance. An allergen declared besides is part of what the names say, not more of it. */
function sharesOf(material: Material, index: SubstanceIndex): OfMaterial {
  const known = new Map<string, Share & { substance: Substance }>();
  const free: Share[] = [];
  for (const share of namedShares(material, index)) {
    const substance = index.find(share.written);
    if (!substance) {
      if (share.written.trim() !== '') free.push(share);
      continue;
    }
    const key = `${substance.id} ${share.nano}`;
    const before = known.get(key);
    known.set(key, { ...share, substance, ...(before ? ofOne(before, share) : {}) });
  }
  for (const { inci, ppm } of material.allergens) {
    const substance = index.find(inci);
    const declared = { low: ppm, used: ppm, high: ppm };
    if (!substance) {
      free.push({ ...declared, written: inci, nano: false });
      continue;
    }
    const key = `${substance.id} false`;
    const before = known.get(key);
    known.set(key, {
      written: inci,
      nano: false,
      ...before,
      substance,
      ...(before ? larger(before, declared) : declared),
    });
  }
  return { known: [...known.values()], free };
}

const KEPT = new WeakMap<SubstanceIndex, WeakMap<Material, OfMaterial>>();

/** The same as long as the material and the substances are: a formula of forty lines is read in no time. */
function keptShares(material: Material, index: SubstanceIndex): OfMaterial {
  const ofIndex = KEPT.get(index) ?? new WeakMap<Material, OfMaterial>();
  KEPT.set(index, ofIndex);
  const kept = ofIndex.get(material) ?? sharesOf(material, index);
  ofIndex.set(material, kept);
  return kept;
}

/** Sums what lines bring, by substance: the amounts of a blend are its line's share times the blend's own. */
export function contentsOf(lines: readonly Dosed[], index: SubstanceIndex): Contents {
  const present = new Map<string, Present>();
  const free = new Map<string, FreeText>();
  for (const { lineId, material, ppm } of lines) {
    if (ppm <= 0) continue;
    const of = (share: number): number => (ppm * share) / WHOLE_PPM;
    const shares = keptShares(material, index);
    for (const { substance, low, used, high, written, nano } of shares.known) {
      const one = present.get(substance.id) ?? { substance, parts: [] };
      one.parts.push({ lineId, material, written, nano, low: of(low), used: of(used), high: of(high) });
      present.set(substance.id, one);
    }
    for (const { written, high } of shares.free) {
      const key = written.toLowerCase();
      const one = free.get(key) ?? { written, high: 0, lineIds: [], couldMean: index.several(written) };
      one.high += of(high);
      if (!one.lineIds.includes(lineId)) one.lineIds.push(lineId);
      free.set(key, one);
    }
  }
  return { present, freeText: [...free.values()] };
}

/** What parts come to together. */
export function amountOf(parts: readonly Amount[]): Amount {
  return parts.reduce<Amount>(sum, { low: 0, used: 0, high: 0 });
}
