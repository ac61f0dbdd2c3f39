import { judgedFindings } from '../../checks/accepted';
import { checkFormula } from '../../checks/all';
import type { CheckChoices, Finding } from '../../checks/check';
import { baseMmol, needyAcidMmol, strongerAcidMmol } from '../../checks/equivalents';
import { formulaFacts, type FormulaFacts } from '../../checks/facts';
import { isBase, needsBase } from '../../emulsions/conflicts/recognise';
import { hlbOf, meanHlbApplies } from '../../emulsions/systems/character';
import { oilPhaseDemand } from '../../emulsions/systems/oil-phase';
import { formulaCost } from '../../costing/formula-cost';
import { basisOf, exposuresOf } from '../../exposure/in-formula';
import { ingredientList } from '../../labelling/ingredient-list';
import { dosedLines } from '../../limits/in-formula';
import type { Law } from '../../limits/law';
import type { Material } from '../../materials/material';
import { naturalOriginOf } from '../../natural-origin/in-formula';
import type { Currency } from '../../quantities/money';
import { substanceIndex } from '../../substances/substance-index';
import { compositionFigures } from '../composition-figures';
import type { FormulaContent } from '../formula';
import { heatingEnergy } from '../heating-energy';

/** A formula with its materials, to be looked at as a whole. */
export interface FormulaSide {
  content: FormulaContent;
  materials: Readonly<Record<string, Material | undefined>>;
}

/** What a formula is looked at with. */
export interface Surroundings {
  law: Law;
  /** ISO 8601 day that is asked about. */
  onDay: string;
  currency: Currency;
  checks: CheckChoices;
}

/** Two ends of a figure; the same where it is known. */
export interface Ends {
  low: number;
  high: number;
}

/** Acid and base of a formula, mmol in 100 g. */
export interface Equivalents {
  /** Acid groups that a base is to neutralise, and stronger acids that take it first. */
  acid: number;
  base: number;
}

/** What follows from a formula: each figure null where it cannot be told. */
export interface Consequences {
  requiredHlb: number | null;
  offeredHlb: number | null;
  equivalents: Equivalents;
  /** Minor units per kg of what has a price, and how much of the formula that is. */
  cost: { perKgMinor: number; coveredPpm: number };
  /** The names of the EU list, in their order. */
  label: string[];
  findings: Finding[];
  /** By substance: systemic dose, mg/kg a day, and margin of safety. */
  exposure: Map<string, { dose: number; margin: number | null }>;
  naturalOrigin: Ends | null;
  oilPhasePercent: number;
  solidsPercent: Ends;
  electrolytePercent: Ends;
  heatingKwhPerKg: number | null;
}

/** HLB that the oils ask for, and that the classic non-ionic emulsifiers offer; null where not known. */
export function hlbOfFormula(facts: FormulaFacts): { required: number | null; offered: number | null } {
  const type = facts.emulsionType === 'w/o' ? 'w/o' : 'o/w';
  const oils = facts.oils.map(({ material, ppm }) => ({ material, mass: ppm }));
  const described = facts.emulsifiers.flatMap(({ material, ppm }) => {
    const hlb = hlbOf(material);
    return hlb !== null && meanHlbApplies(material) ? [{ hlb, ppm }] : [];
  });
  const mass = described.reduce((sum, { ppm }) => sum + ppm, 0);
  return {
    required: facts.isEmulsion ? oilPhaseDemand(oils, type).value : null,
    offered: mass > 0 ? described.reduce((sum, { hlb, ppm }) => sum + hlb * ppm, 0) / mass : null,
  };
}

/** Acid and base that a formula's lines bring, mmol in 100 g. */
export function equivalentsOf({ used }: Pick<FormulaFacts, 'used'>): Equivalents {
  const sum = (values: number[]): number => values.reduce((total, one) => total + one, 0);
  return {
    base: sum(used.filter(({ material }) => isBase(material)).map(baseMmol)),
    acid: sum(used.map((line) => (needsBase(line.material) ? needyAcidMmol(line) : strongerAcidMmol(line)))),
  };
}

function exposureOf(facts: FormulaFacts): Consequences['exposure'] {
  const basis = basisOf(facts.content.market);
  if (!basis || !facts.lawOf) return new Map();
  return new Map(
    exposuresOf(facts.lawOf.contents, basis).map(({ substance, dose, margin }) => [
      substance.name,
      { dose: dose.value, margin: margin?.value ?? null },
    ]),
  );
}

const ends = (range: { low: { value: number }; high: { value: number } }): Ends => ({
  low: range.low.value,
  high: range.high.value,
});

/** Works out everything that follows from a formula and that a change of it may move. */
export function consequencesOf({ content, materials }: FormulaSide, around: Surroundings): Consequences {
  const { law, onDay, currency, checks } = around;
  const find = (id: string): Material | undefined => materials[id];
  const known = new Map(
    Object.entries(materials).flatMap(([id, material]) => (material ? [[id, material] as const] : [])),
  );
  const input = { content, materials: known, law, onDay };
  const facts = formulaFacts(input);
  const { required, offered } = hlbOfFormula(facts);
  const { perKgMinor, coveredPpm } = formulaCost(content, materials, currency);
  const origin = naturalOriginOf(dosedLines(content, find), substanceIndex(law.substances)).withWater;
  const figures = compositionFigures(content, find);
  return {
    requiredHlb: required,
    offeredHlb: offered,
    equivalents: equivalentsOf(facts),
    cost: { perKgMinor, coveredPpm },
    label: ingredientList(content, materials, { form: 'EU', law }).ingredients.map(({ name }) => name),
    findings: judgedFindings(checkFormula(input, checks), content).open,
    exposure: exposureOf(facts),
    naturalOrigin: origin ? ends(origin) : null,
    oilPhasePercent: figures.oilPhase.value,
    solidsPercent: ends(figures.solids),
    electrolytePercent: ends(figures.electrolyte),
    heatingKwhPerKg: heatingEnergy(content, find)?.value ?? null,
  };
}
