import { baseMmol, needyAcidMmol, strongerAcidMmol } from '../checks/equivalents';
import { isBase, isEmulsifier, needsBase } from '../emulsions/conflicts/recognise';
import { hlbOf, meanHlbApplies, workingCharge } from '../emulsions/systems/character';
import { isOil } from '../emulsions/systems/oil-phase';
import { newestPrice, pricePerKgMinor } from '../costing/offers';
import { contentsOf, type Dosed } from '../limits/contents';
import { judgeLimits, subjectsOf } from '../limits/judge';
import type { Law } from '../limits/law';
import type { Limit } from '../limits/limit';
import type { Situation } from '../limits/situation';
import { figureValue } from '../materials/figure';
import type { Material } from '../materials/material';
import type { Offer } from '../materials/offer';
import { naturalOriginOf } from '../natural-origin/in-formula';
import { foldedWords } from '../quantities/fold';
import type { Currency } from '../quantities/money';
import { percentFromPpm } from '../quantities/share';
import { namesWithin, nameKey } from '../substances/names';
import { substanceIndex, type SubstanceIndex } from '../substances/substance-index';
import { roleOf } from './roles';

/** A limit of law that a formula is held to, as one row: Σ share × coefficient ≤ most. */
export interface LawRow {
  key: string;
  says: string;
  most: number;
}

/** A material that may stand in the new formula, with all that the demands ask of it. Shares in % of the formula. */
export interface Player {
  material: Material;
  /** What it has now; 0 for one that would be new. */
  now: number;
  role: string;
  least: number;
  most: number;
  /** Minor units per kg; null where no price counts. */
  cost: number | null;
  /** Natural origin index at its lower end, and whether it is formulation water. */
  origin: number;
  water: boolean;
  /** HLB of a classic non-ionic emulsifier; required HLB of an oil. */
  hlb: number | null;
  required: number | null;
  isOil: boolean;
  charge: 'anionic' | 'cationic' | null;
  /** Base less acid that 1 % brings, mmol in 100 g. */
  baseLessAcid: number;
  /** By the key of a law's row: what 1 % counts there; and those rows. */
  law: ReadonlyMap<string, number>;
  limits: readonly LawRow[];
  /** Why it is barred, by the demand that bars it; null where it is not. */
  barred: string | null;
  x: string;
  y: string;
}

/** Whether a player stands in the formula of now. */
export const isOwn = ({ now }: Player): boolean => now > 0;

/** What players are made with. */
export interface PlayerGround {
  currency: Currency;
  law: Law;
  situations: readonly Situation[];
  emulsionType: 'o/w' | 'w/o';
  /** Suppliers’ names as `supplierKey` gives them. */
  withoutSuppliers: ReadonlySet<string>;
  /** Ids of substances, and the keys of names that the table does not know. */
  withoutSubstances: ReadonlySet<string>;
}

const ONE_PERCENT_PPM = 10_000;

const BY_SUBSTANCE = new WeakMap<Law, Map<string, Limit[]>>();

/** The limits of a law by each substance that they are about; made once a law. */
function limitsBySubstance(law: Law): Map<string, Limit[]> {
  const known = BY_SUBSTANCE.get(law);
  if (known) return known;
  const index = substanceIndex(law.substances);
  const made = new Map<string, Limit[]>();
  for (const limit of law.limits)
    for (const { id } of subjectsOf(limit, index) ?? []) {
      const list = made.get(id);
      if (list) list.push(limit);
      else made.set(id, [limit]);
    }
  BY_SUBSTANCE.set(law, made);
  return made;
}

/** What 1 % of a material counts against each limit that surely applies, and those limits. */
export function lawOfOne(
  material: Material,
  { law, situations }: Pick<PlayerGround, 'law' | 'situations'>,
): { law: Map<string, number>; limits: LawRow[] } {
  const counts = new Map<string, number>();
  const rows: LawRow[] = [];
  const found = { law: counts, limits: rows };
  const dosed: Dosed[] = [{ lineId: material.id, material, ppm: ONE_PERCENT_PPM }];
  const contents = contentsOf(dosed, substanceIndex(law.substances));
  const of = limitsBySubstance(law);
  const limits = [...new Set([...contents.present.keys()].flatMap((id) => of.get(id) ?? []))];
  if (limits.length === 0) return found;
  const own = { substances: law.substances, limits };
  for (const situation of situations)
    for (const { limit, total, most, certain, time } of judgeLimits(own, contents, situation)) {
      const bars = limit.rule === 'prohibited';
      if (!certain || time !== 'in force' || limit.standing !== 'law') continue;
      if ((most === null && !bars) || limit.rule === 'range of the active') continue;
      const key = `${situation.region} ${limit.id}`;
      counts.set(key, total.high);
      // "Less than" is missed by a hair's breadth that no balance shows.
      const room = limit.rule === 'less than' ? 1e-6 : 0;
      rows.push({ key, says: `${limit.subject} (${situation.region})`, most: bars ? 0 : (most ?? 0) - room });
    }
  return found;
}

function priceOf(material: Material, ground: PlayerGround): number | null {
  const offers = material.offers.filter((offer) => !isLeftOut(offer, ground));
  const newest = newestPrice(offers, ground.currency);
  return newest && pricePerKgMinor(newest);
}

function baseLessAcidOf(material: Material): number {
  const line = { lineId: '', material, ppm: ONE_PERCENT_PPM } as Parameters<typeof baseMmol>[0];
  const base = isBase(material) ? baseMmol(line) : 0;
  return base - (needsBase(material) ? needyAcidMmol(line) : strongerAcidMmol(line));
}

function rangeOf(material: Material, now: number): { least: number; most: number } {
  const { minPpm = null, maxPpm = null } = material.usage ?? {};
  // Where no range is recorded, what stands in the formula now is all that is known of it.
  const most = maxPpm === null ? Math.max(2 * now, now + 1) : percentFromPpm(maxPpm);
  return { least: percentFromPpm(minPpm ?? 0), most: Math.min(100, most) };
}

/** The substances that a written name means, by their key; one may name several, as suppliers write blends. */
function meant(written: string, index: SubstanceIndex): { key: string; name: string }[] {
  const names = index.find(written) ? [written] : namesWithin(written);
  return names.map((name) => {
    const known = index.find(name);
    return known ? { key: known.id, name: known.name } : { key: nameKey(name), name };
  });
}

/** What is to be left out, by the keys of `meant`. */
export function leftOut(names: readonly string[], index: SubstanceIndex): Set<string> {
  return new Set(names.flatMap((name) => meant(name, index).map(({ key }) => key)));
}

/** A supplier's name as it is compared: however its case and spaces are written. */
export const supplierKey = (name: string): string => foldedWords(name).join(' ');

const isLeftOut = ({ supplier }: Offer, { withoutSuppliers }: PlayerGround): boolean =>
  withoutSuppliers.has(supplierKey(supplier));

function barredBy(material: Material, ground: PlayerGround): string | null {
  const index = substanceIndex(ground.law.substances);
  for (const { inci } of [...material.composition, ...material.allergens]) {
    const found = meant(inci, index).find(({ key }) => ground.withoutSubstances.has(key));
    if (found) return `without ${found.name}`;
  }
  const { offers } = material;
  const only = offers.length > 0 && offers.every((offer) => isLeftOut(offer, ground));
  return only ? `without ${offers[0]?.supplier ?? ''}` : null;
}

/** A material as a variable of the model. @param now its share of the present formula, % */
export function playerOf(material: Material, now: number, at: number, ground: PlayerGround): Player {
  const { low = 0, formulationWater = false } =
    naturalOriginOf([{ lineId: '', material, ppm: ONE_PERCENT_PPM }], substanceIndex(ground.law.substances))
      .lines[0] ?? {};
  const charge =
    isEmulsifier(material) || material.functions.includes('surfactant') ? workingCharge(material) : null;
  const figure = material.figures[ground.emulsionType === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo'];
  return {
    material,
    now,
    role: roleOf(material),
    ...rangeOf(material, now),
    cost: priceOf(material, ground),
    origin: low,
    water: formulationWater,
    hlb: isEmulsifier(material) && meanHlbApplies(material) ? hlbOf(material) : null,
    required: isOil(material) ? figureValue(figure) : null,
    isOil: isOil(material),
    charge: charge === 'anionic' || charge === 'cationic' ? charge : null,
    baseLessAcid: baseLessAcidOf(material),
    ...lawOfOne(material, ground),
    barred: barredBy(material, ground),
    x: `x${at}`,
    y: `y${at}`,
  };
}
