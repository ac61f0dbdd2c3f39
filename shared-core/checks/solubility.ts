import { figureValue } from '../materials/figure';
import { bringsWater } from '../emulsions/conflicts/recognise';
import { WHOLE_PPM } from '../quantities/share';
import {
  HANSEN,
  hansenOfBlend,
  relativeEnergyDifference,
  type BlendPart,
  type Hansen,
} from '../solubility/hansen';
import { hansenOf, type KnownHansen } from '../solubility/parameters-of';
import { substanceIndex } from '../substances/substance-index';
import type { CheckRule, Finding } from './check';
import { namesOf, percentText, sumPpm, type FormulaFacts, type LineFacts } from './facts';

/** Twice Vaughan's rule of 2 (cal/cm³)½: the radius taken where none is published, MPa½. */
const USUAL_RADIUS = 8;
/** Less than this, ppm of the formula, is not asked about: almost all dissolves that little. Common practice, no source. */
const ASKED_FROM = 2_000;
/** At least this part of the solvent must be known, of its mass. */
const KNOWN_PART = 0.5;
/** Where no density is recorded, g/mL. */
const USUAL_DENSITY = 0.95;

/** The parameters of a material that is mostly one published substance. */
function parametersOf(
  { material }: LineFacts,
  { law }: FormulaFacts,
): (KnownHansen & { inci: string }) | null {
  const main = material.composition.find(({ lowPpm }) => lowPpm > WHOLE_PPM / 2);
  const found = main && hansenOf(main.inci, substanceIndex(law?.substances ?? []));
  return main && found ? { ...found, inci: main.inci } : null;
}

const DISSOLVES = new Set(['active', 'uv filter', 'fragrance']);

/** What dissolves in water beyond 1 % lies within this sphere: water alone, by its own parameters, tells it badly. Hansen, from memory. */
const WATER = { d: 15.1, p: 20.4, h: 16.5, radius: 18.1 };

/** What is to dissolve: an active, UV filter or fragrance that is no pigment. */
function isSolute({ material, ppm }: LineFacts): boolean {
  return (
    ppm >= ASKED_FROM &&
    material.functions.some((one) => DISSOLVES.has(one)) &&
    !material.solubleIn.includes('insoluble') &&
    !bringsWater(material)
  );
}

/** The liquids of the side that a line goes to; its own phase says which, else where it is used. */
function solventsOf(line: LineFacts, { oils, used }: FormulaFacts): LineFacts[] {
  const waterSide = used.filter(
    (one) => one !== line && !oils.includes(one) && !isSolute(one) && isLiquid(one),
  );
  const oilSide = oils.filter((one) => one !== line && !isSolute(one));
  const inPhase = (lines: LineFacts[]): boolean => lines.some((one) => one.phase.id === line.phase.id);
  if (inPhase(oilSide) !== inPhase(waterSide)) return inPhase(oilSide) ? oilSide : waterSide;
  const { phaseOfUse, solubleIn } = line.material;
  const oily = phaseOfUse === 'oil' || (phaseOfUse !== 'water' && solubleIn.includes('oil'));
  return oily ? oilSide : waterSide;
}

const isLiquid = ({ material }: LineFacts): boolean =>
  material.form === null || material.form === 'liquid' || material.form === 'viscous liquid';

interface Solvent extends Hansen {
  /** Of the mass of the liquids. */
  known: number;
  /** The sphere's own, where it is one; else the solute's counts. */
  radius: number | null;
}

function blendOf(lines: readonly LineFacts[], facts: FormulaFacts): Solvent | null {
  const liquids = lines.filter(isLiquid);
  const watery = liquids.filter(({ material }) => bringsWater(material));
  if (2 * sumPpm(watery) > sumPpm(liquids)) return { ...WATER, known: 1 };
  const parts = liquids.flatMap((line): (BlendPart & { ppm: number })[] => {
    const of = parametersOf(line, facts);
    const density = figureValue(line.material.figures.density) ?? USUAL_DENSITY;
    return of ? [{ d: of.d, p: of.p, h: of.h, volume: line.ppm / density, ppm: line.ppm }] : [];
  });
  const whole = liquids.reduce((sum, { ppm }) => sum + ppm, 0);
  const known = whole === 0 ? 0 : parts.reduce((sum, { ppm }) => sum + ppm, 0) / whole;
  if (known < KNOWN_PART) return null;
  const { d, p, h } = hansenOfBlend(parts);
  return { d: d.value, p: p.value, h: h.value, known, radius: null };
}

const side = (lines: readonly LineFacts[], facts: FormulaFacts): 'oil' | 'water' =>
  lines.some((line) => facts.oils.includes(line)) ? 'oil' : 'water';

function judgeLine(line: LineFacts, facts: FormulaFacts): Finding[] {
  const solute = parametersOf(line, facts);
  const liquids = solventsOf(line, facts);
  const where = side(liquids, facts);
  // What is recorded of it goes before what its parameters say.
  if (line.material.solubleIn.includes(where)) return [];
  const solvent = solute && blendOf(liquids, facts);
  if (!solute || !solvent) return [];
  const own = solvent.radius ?? solute.radius;
  const radius = own ?? USUAL_RADIUS;
  const red = relativeEnergyDifference(solute, radius, solvent);
  if (red.value <= 1) return [];
  const estimated = own === null ? ` No radius is published for it: ${USUAL_RADIUS} MPa½ is taken.` : '';
  const part =
    solvent.known < 0.995 ? ` Known of ${Math.round(100 * solvent.known)} % of these liquids only.` : '';
  return [
    {
      ruleId: 'solubility',
      severity: own === null ? 'note' : 'warn',
      title: `${line.material.tradeName} at ${percentText(line.ppm)} is unlike the liquids of the ${where} phase: ${red.value.toFixed(1)} times the radius within which it dissolves`,
      lines: [line.lineId],
      advice: `It may stay undissolved, or crystallise in the cold. Move it to the other phase, dissolve it in a closer solvent first (${namesOf(liquids.filter(isLiquid))} are there now), or use less; look at it after a week at 5 °C.${estimated}${part}`,
      source: HANSEN,
      working: red,
    },
  ];
}

/** Actives, UV filters and fragrance dissolve in the liquids of the phase in which they stand. */
export const solubility: CheckRule = {
  id: 'solubility',
  name: 'Actives, UV filters and fragrance dissolve in their phase',
  tells: 'an active, UV filter or fragrance is unlike the liquids of its phase, and may not dissolve',
  judge: (facts) => facts.used.filter(isSolute).flatMap((line) => judgeLine(line, facts)),
};
