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

export function acidOfMaterial({ tradeName, figures }: Material): Taken {
  const acidValue = figureValue(figures.acidValue);
  const acidMolarMass = figureValue(figures.molarMass);
  return {
    part: {
      acidName: tradeName,
      acidKnownBy: acidValue !== null ? 'acid value' : 'molar mass',
      acidValue,
      acidMolarMass,
      acidEquivalents: figureValue(figures.equivalents),
      acidActivePercent: figureValue(figures.activePercent) ?? 100,
      acidPKas: [figureValue(figures.pKa)],
    },
    says:
      acidValue === null && acidMolarMass === null
        ? `${tradeName} has no acid value or molar mass recorded: enter it here.`
        : `${tradeName}: ${figures.acidValue?.source || figures.molarMass?.source || 'no source recorded'}.`,
  };
}

export function baseOfMaterial({ tradeName, figures, hazards }: Material): Taken {
  const baseMolarMass = figureValue(figures.molarMass);
  return {
    part: {
      baseName: tradeName,
      baseMolarMass,
      baseEquivalents: figureValue(figures.equivalents),
      basePercent: figureValue(figures.activePercent) ?? 100,
      basePKa: figureValue(figures.pKa),
      caustic: hazards.includes('caustic'),
    },
    says:
      baseMolarMass === null
        ? `${tradeName} has no molar mass recorded: enter it here.`
        : `${tradeName}: ${figures.molarMass?.source || 'no source recorded'}.`,
  };
}

export function acidOfList(inci: string): Taken | null {
  const found = KNOWN_ACIDS.find((one) => one.inci === inci);
  if (!found) return null;
  const { molarMass, equivalents, acidValueRange, pKas, source } = found;
  const basis = source.basis === 'memory' ? '; from memory: check it' : '';
  return {
    part: {
      acidName: inci,
      acidKnownBy: acidValueRange ? 'acid value' : 'molar mass',
      acidValue: null,
      acidMolarMass: molarMass,
      acidEquivalents: equivalents,
      acidActivePercent: 100,
      acidPKas: pKas.length > 0 ? [...pKas] : [null],
    },
    says: acidValueRange
      ? `${inci}: ${acidValueRange.join(' to ')} mg KOH/g (${source.text}${basis}). Enter the acid value of the lot’s certificate.`
      : `${inci}: ${molarMass} g/mol by IUPAC weights, ${equivalents} acid groups.`,
  };
}

export function baseOfList(inci: string): Taken | null {
  const found = KNOWN_BASES.find((one) => one.inci === inci);
  if (!found) return null;
  const { molarMass, equivalents, caustic, pKaConjugateAcid: basePKa } = found;
  return {
    part: { baseName: inci, baseMolarMass: molarMass, baseEquivalents: equivalents, caustic, basePKa },
    says: `${inci}: ${molarMass} g/mol by IUPAC weights. Enter the concentration that you weigh.`,
  };
}
