import type { Source } from '../working/working';

/** An acid as makers weigh it. The specification's acid value goes before the theoretical one. */
export interface KnownAcid {
  inci: string;
  /** g/mol */
  molarMass: number;
  /** Acid groups per molecule. */
  equivalents: number;
  /** mg KOH/g, lowest and highest of the monograph; null when it states none. */
  acidValueRange: readonly [number, number] | null;
  pKas: readonly number[];
  source: Source;
}

export interface KnownBase {
  inci: string;
  molarMass: number;
  equivalents: number;
  /** The form that it is sold in, with the lowest and highest strength of that, %; common practice, no source. */
  soldAs: string;
  /** pKa of the conjugate acid of an amine; null for an alkali. */
  pKaConjugateAcid: number | null;
}

const CRC: Source = {
  text: 'CRC Handbook of Chemistry and Physics, CRC Press, Boca Raton, dissociation constants of organic acids',
  basis: 'memory',
};
const read = (text: string): Source => ({ text, basis: 'read' });
const memory = (text: string): Source => ({ text, basis: 'memory' });

function fattyAcid(inci: string, molarMass: number, range: [number, number], source: Source): KnownAcid {
  return { inci, molarMass, equivalents: 1, acidValueRange: range, pKas: [], source };
}

/** Molar masses by IUPAC weights; acid values by monograph. */
export const KNOWN_ACIDS: readonly KnownAcid[] = [
  fattyAcid(
    'Stearic Acid (commercial, 40-60 % C18)',
    284.484,
    [194, 212],
    read('USP35-NF30 and harmonised USP-NF (2016) Stearic Acid monograph'),
  ),
  fattyAcid(
    'Purified Stearic Acid (>= 90 % C18)',
    284.484,
    [195, 200],
    read('USP32-NF27 Purified Stearic Acid monograph'),
  ),
  fattyAcid('Oleic Acid', 282.468, [196, 204], read('USP29-NF24 Oleic Acid monograph')),
  fattyAcid('Palmitic Acid', 256.43, [216, 220], memory('NF Palmitic Acid monograph')),
  fattyAcid('Myristic Acid', 228.376, [242, 249], memory('NF Myristic Acid / Ph. Eur.')),
  fattyAcid('Lauric Acid', 200.322, [276, 282], memory('NF / Ph. Eur. Lauric Acid')),
  polyacid('Citric Acid (anhydrous)', 192.123, 3, [3.13, 4.76, 6.4]),
  polyacid('Citric Acid Monohydrate', 210.138, 3, [3.13, 4.76, 6.4]),
  polyacid('Lactic Acid', 90.078, 1, [3.86]),
];

function polyacid(inci: string, molarMass: number, equivalents: number, pKas: number[]): KnownAcid {
  return { inci, molarMass, equivalents, acidValueRange: null, pKas, source: CRC };
}

function base(inci: string, molarMass: number, soldAs: string, pKa: number | null): KnownBase {
  return { inci, molarMass, equivalents: 1, soldAs, pKaConjugateAcid: pKa };
}

/** Molar masses by IUPAC weights; pKas of the amines from the CRC Handbook, from memory. */
export const KNOWN_BASES: readonly KnownBase[] = [
  base('Sodium Hydroxide', 39.997, 'beads of 97 to 99 %, or a solution', null),
  base('Potassium Hydroxide', 56.105, 'flakes of 88 to 91 %, pellets of 85 % and more, or a solution', null),
  base('Triethanolamine', 149.19, '99 or 85 %', 7.76),
  base('Tromethamine', 121.136, 'crystals of 99 % and more', 8.07),
  base('Aminomethyl Propanol', 89.138, '95 % with 5 % of water', 9.69),
];
