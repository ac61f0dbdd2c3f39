import { sourceWords } from '@core/working/source-words';
import type { NeutraliseRequest } from '@core/calculators/neutralise-request';
import { figureValue } from '@core/materials/figure';
import type { Material } from '@core/materials/material';
import { KNOWN_ACIDS, KNOWN_BASES } from '@core/neutralisation/acids-and-bases';

/** What a picked acid or base fills in, and what it leaves to be entered. */
export interface Taken {
  part: Partial<NeutraliseRequest>;
  /** Empty when nothing is left to say. */
  says: string;
}

export const ACID_NAMES = KNOWN_ACIDS.map((one) => one.inci);
export const BASE_NAMES = KNOWN_BASES.map((one) => one.inci);

const inciOf = ({ composition }: Material): string => composition.map((part) => part.inci).join(', ');
const range = (low: number | null | undefined, high: number | null | undefined): string =>
  low !== null && high !== null && low !== undefined && high !== undefined
    ? ` (${low} to ${high} %, their middle)`
    : '';

export function acidOfMaterial(material: Material): Taken {
  const { tradeName, figures, hazards } = material;
  const acidValue = figureValue(figures.acidValue);
  const acidMolarMass = figureValue(figures.molarMass);
  return {
    part: {
      acidName: tradeName,
      acidInci: inciOf(material),
      acidHazards: hazards,
      acidKnownBy: acidValue !== null ? 'acid value' : 'molar mass',
      acidValue,
      acidMolarMass,
      acidEquivalents: figureValue(figures.equivalents),
      acidActivePercent: figureValue(figures.activePercent),
      acidPKas: [figureValue(figures.pKa)],
    },
    says:
      acidValue === null && acidMolarMass === null
        ? `${tradeName} has no acid value or molar mass recorded: enter it here.`
        : `${tradeName}: ${figures.acidValue?.source || figures.molarMass?.source || 'no source recorded'}.`,
  };
}

/** The strength is the recorded one, with its range; where none is recorded it is asked for. */
export function baseOfMaterial(material: Material): Taken {
  const { tradeName, figures, hazards } = material;
  const baseMolarMass = figureValue(figures.molarMass);
  const basePercent = figureValue(figures.activePercent);
  const strength =
    basePercent === null
      ? ' No strength is recorded: enter that of the lot.'
      : ` Strength ${basePercent} %${range(figures.activePercent?.low, figures.activePercent?.high)}; the certificate of the lot goes before it.`;
  return {
    part: {
      baseName: tradeName,
      baseInci: inciOf(material),
      baseHazards: hazards,
      baseMolarMass,
      baseEquivalents: figureValue(figures.equivalents),
      basePercent,
      basePercentLow: figures.activePercent?.low ?? null,
      basePercentHigh: figures.activePercent?.high ?? null,
      basePKa: figureValue(figures.pKa),
    },
    says:
      baseMolarMass === null
        ? `${tradeName} has no molar mass recorded: enter it here.${strength}`
        : `${tradeName}: ${figures.molarMass?.source || 'no source recorded'}.${strength}`,
  };
}

export function acidOfList(inci: string): Taken | null {
  const found = KNOWN_ACIDS.find((one) => one.inci === inci);
  if (!found) return null;
  const { molarMass, equivalents, acidValueRange, pKas, source } = found;
  return {
    part: {
      acidName: inci,
      acidInci: inci,
      acidHazards: [],
      acidKnownBy: acidValueRange ? 'acid value' : 'molar mass',
      acidValue: null,
      acidMolarMass: molarMass,
      acidEquivalents: equivalents,
      acidActivePercent: null,
      acidPKas: pKas.length > 0 ? [...pKas] : [null],
    },
    says: acidValueRange
      ? `${inci}: ${acidValueRange.join(' to ')} mg KOH/g (from ${sourceWords(source)}). Enter the acid value of the lot’s certificate.`
      : `${inci}: ${molarMass} g/mol by IUPAC weights, ${equivalents} acid ${equivalents === 1 ? 'group' : 'groups'}. Enter the strength of what you weigh.`,
  };
}

export function baseOfList(inci: string): Taken | null {
  const found = KNOWN_BASES.find((one) => one.inci === inci);
  if (!found) return null;
  const { molarMass, equivalents, soldAs, pKaConjugateAcid: basePKa } = found;
  return {
    part: {
      baseName: inci,
      baseInci: inci,
      baseHazards: [],
      baseMolarMass: molarMass,
      baseEquivalents: equivalents,
      basePercent: null,
      basePercentLow: null,
      basePercentHigh: null,
      basePKa,
    },
    says: `${inci}: ${molarMass} g/mol by IUPAC weights. It is sold as ${soldAs} (common practice, no source): enter the strength of yours.`,
  };
}
