import { KNOWN_ACIDS, KNOWN_BASES } from '../neutralisation/acids-and-bases';
import { figureValue } from '../materials/figure';
import type { InciPart } from '../materials/composition';
import { isFattyAcid } from '../emulsions/conflicts/recognise';
import { WHOLE_PPM } from '../quantities/share';
import { endsOf, nameKey, namesWithin, plainName } from '../substances/names';
import type { LineFacts } from './facts';

/** KOH, g/mol: the acid value is stated in it. */
const KOH = 56.105;
/** Acid groups of a carbomer, mmol/g: 56 to 68 % of carboxyl (compendial assay) over 45.02 g/mol, the middle. */
const CARBOMER_MMOL_PER_G = (10 * 62) / 45.02;
const CARBOMER = /^carbomer$|^acrylates\/c10-30 alkyl acrylate crosspolymer$/;

/** The end of a supplier's range: of a base the least counts, of what takes it up the most. */
type End = 'least' | 'most';

/** Grams in 100 g of the formula of what one part holds of the names that are meant. */
const grams = (line: LineFacts, part: InciPart, end: End, isMeant: (name: string) => boolean): number =>
  ((line.ppm / 10_000) * endsOf(part, isMeant)[end]) / WHOLE_PPM;

/** What a line holds of acid or base by its names, mmol in 100 g of the formula. */
function byTable(
  line: LineFacts,
  table: readonly { inci: string; molarMass: number; equivalents: number }[],
  end: End,
): number {
  return line.material.composition.reduce((sum, part) => {
    const each = [...new Set(namesWithin(part.inci).map(nameKey))].flatMap((key) => {
      const known = table.find((one) => nameKey(one.inci) === key);
      if (!known) return [];
      const held = grams(line, part, end, (name) => nameKey(name) === key);
      return [(1000 * held * known.equivalents) / known.molarMass];
    });
    // Of several names written into one, each may be all of it: the strongest counts, once.
    return sum + Math.max(0, ...each);
  }, 0);
}

/** The same from the molar mass recorded on the material and its active matter. */
function byFigures({ material, ppm }: LineFacts, end: End): number {
  const molarMass = figureValue(material.figures.molarMass);
  if (molarMass === null) return 0;
  const figure = material.figures.activePercent;
  const known = end === 'least' ? figure?.low : figure?.high;
  const active = figure?.value ?? known ?? figureValue(figure) ?? 100;
  return (10 * (ppm / 10_000) * active * (figureValue(material.figures.equivalents) ?? 1)) / molarMass;
}

/** Base that a line brings, mmol in 100 g of the formula; zero where it cannot be told. */
export function baseMmol(line: LineFacts): number {
  return (
    byTable(line, KNOWN_BASES, 'least') ||
    (line.material.functions.includes('base') ? byFigures(line, 'least') : 0)
  );
}

/** Acid groups of a fatty acid or carbomer, which a base is to neutralise, mmol in 100 g of the formula. */
export function needyAcidMmol(line: LineFacts): number {
  const { material, ppm } = line;
  const acidValue = figureValue(material.figures.acidValue);
  if (isFattyAcid(material) && acidValue !== null) return ((ppm / 10_000) * acidValue) / KOH;
  // A dispersion sold ready holds a few per cent of it.
  const carbomer = material.composition.reduce(
    (sum, part) => sum + grams(line, part, 'most', (name) => CARBOMER.test(plainName(name))),
    0,
  );
  if (carbomer > 0) return carbomer * CARBOMER_MMOL_PER_G;
  return byTable(line, KNOWN_ACIDS, 'most') || byFigures(line, 'most');
}

/** Acid that takes up base before a fatty acid or carbomer does: citric, lactic and the like. */
export function strongerAcidMmol(line: LineFacts): number {
  const { material } = line;
  if (!material.functions.includes('acid') || isFattyAcid(material) || material.needsNeutralising) return 0;
  return byTable(line, KNOWN_ACIDS, 'most') || byFigures(line, 'most');
}
