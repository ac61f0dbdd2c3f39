import type { Source } from '../working/working';

/** A published pKa with its source. */
export interface PublishedPka {
  pKa: number;
  source: Source;
}

/** An organic acid used to preserve; the first pKa is the one used, all are shown. */
export interface OrganicAcid {
  inci: string;
  pKas: readonly PublishedPka[];
  note: string;
}

const STEINBERG: Source = {
  text: 'Steinberg D.C., The chemistry of preservatives, J. Cosmet. Sci. 56, 361-362 (2005)',
  basis: 'read',
};
const CRC: Source = {
  text: 'CRC Handbook of Chemistry and Physics, CRC Press, Boca Raton, dissociation constants of organic acids and bases',
  basis: 'memory',
};
const DATA_BOOK: Source = {
  text: 'Smith J., Hong-Shum L., Food Additives Data Book (Blackwell 2003)',
  basis: 'read',
};
const EXCIPIENTS: Source = {
  text: 'Rowe R.C., Sheskey P.J., Quinn M.E. (eds), Handbook of Pharmaceutical Excipients, 6th ed., Pharmaceutical Press, London 2009',
  basis: 'memory',
};
const BEAN_1967: Source = {
  text: 'Distribution and activity of benzoic acid in emulsified systems, J. Soc. Cosmet. Chem. 18(4), 211-212 (1967), Table IV',
  basis: 'read',
};
const ENCYCLOPAEDIA: Source = { text: 'an encyclopaedia’s article on sorbic acid', basis: 'read' };
const older = (text: string): Source => ({ text, basis: 'memory' });

function acid(inci: string, pKas: [number, Source][], note = ''): OrganicAcid {
  return { inci, note, pKas: pKas.map(([pKa, source]) => ({ pKa, source })) };
}

/** Published pKas of the acids that cosmetics are preserved with. */
export const ORGANIC_ACIDS: readonly OrganicAcid[] = [
  acid('Benzoic Acid', [
    [4.19, DATA_BOOK],
    [4.18, STEINBERG],
    [4.2, BEAN_1967],
    [4.204, CRC],
  ]),
  acid('Sorbic Acid', [
    [4.76, ENCYCLOPAEDIA],
    [4.76, STEINBERG],
    [4.76, DATA_BOOK],
  ]),
  acid('Dehydroacetic Acid', [
    [5.27, STEINBERG],
    [5.27, EXCIPIENTS],
  ]),
  acid(
    'Salicylic Acid',
    [
      [2.97, STEINBERG],
      [2.97, CRC],
    ],
    'first dissociation',
  ),
  acid('Formic Acid', [
    [3.75, CRC],
    [3.75, STEINBERG],
  ]),
  acid('Propionic Acid', [[4.87, STEINBERG]]),
  acid('p-Anisic Acid', [
    [4.47, CRC],
    [4.5, older('older tables of dissociation constants')],
  ]),
  acid('Levulinic Acid', [
    [4.64, CRC],
    [4.59, older('The Merck Index, Merck, Whitehouse Station')],
  ]),
  acid('Undecylenic Acid', [[4.79, CRC]]),
];

/** The acid of that INCI name, in any case; undefined when it is not in the table. */
export function organicAcid(inci: string): OrganicAcid | undefined {
  const wanted = inci.trim().toLowerCase();
  return ORGANIC_ACIDS.find((one) => one.inci.toLowerCase() === wanted);
}
