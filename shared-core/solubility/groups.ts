import type { Source } from '../working/working';

/** What a group adds to dispersion, (J·cm³)½/mol, polarity, the same, and hydrogen bonding, J/mol; null where not published. */
export interface KrevelenGroup {
  Fd: number;
  Fp: number | null;
  Eh: number | null;
}

export const KREVELEN: Source = {
  text: 'van Krevelen D.W., te Nijenhuis K., Properties of Polymers, 4th ed., Elsevier, Amsterdam 2009, Table 7.8',
  basis: 'memory',
};

export const KREVELEN_GROUPS: Readonly<Record<string, KrevelenGroup>> = {
  CH3: { Fd: 420, Fp: 0, Eh: 0 },
  CH2: { Fd: 270, Fp: 0, Eh: 0 },
  CH: { Fd: 80, Fp: 0, Eh: 0 },
  C: { Fd: -70, Fp: 0, Eh: 0 },
  '=CH2': { Fd: 400, Fp: 0, Eh: 0 },
  '=CH-': { Fd: 200, Fp: 0, Eh: 0 },
  '=C<': { Fd: 70, Fp: 0, Eh: 0 },
  cyclohexyl: { Fd: 1620, Fp: 0, Eh: 0 },
  phenyl: { Fd: 1430, Fp: 110, Eh: 0 },
  phenylene: { Fd: 1270, Fp: 110, Eh: 0 },
  F: { Fd: 220, Fp: null, Eh: null },
  Cl: { Fd: 450, Fp: 550, Eh: 400 },
  CN: { Fd: 430, Fp: 1100, Eh: 2500 },
  OH: { Fd: 210, Fp: 500, Eh: 20000 },
  O: { Fd: 100, Fp: 400, Eh: 3000 },
  CHO: { Fd: 470, Fp: 800, Eh: 4500 },
  CO: { Fd: 290, Fp: 770, Eh: 2000 },
  COOH: { Fd: 530, Fp: 420, Eh: 10000 },
  COO: { Fd: 390, Fp: 490, Eh: 7000 },
  NH2: { Fd: 280, Fp: null, Eh: 8400 },
  NH: { Fd: 160, Fp: 210, Eh: 3100 },
  N: { Fd: 20, Fp: 800, Eh: 5000 },
  NO2: { Fd: 500, Fp: 1070, Eh: 1500 },
  S: { Fd: 440, Fp: null, Eh: null },
  PO4: { Fd: 740, Fp: 1890, Eh: 13000 },
  ring: { Fd: 190, Fp: null, Eh: null },
};

/** What a group adds to the energy of cohesion, J/mol, and to the molar volume, cm³/mol. */
export interface FedorsGroup {
  E: number;
  V: number;
}

export const FEDORS: Source = { text: 'Fedors R.F., Polym. Eng. Sci. 14, 147-154 (1974)', basis: 'memory' };

export const FEDORS_GROUPS: Readonly<Record<string, FedorsGroup>> = {
  CH3: { E: 4710, V: 33.5 },
  CH2: { E: 4940, V: 16.1 },
  CH: { E: 3430, V: -1 },
  C: { E: 1470, V: -19.2 },
  '=CH2': { E: 4310, V: 28.5 },
  '=CH-': { E: 4310, V: 13.5 },
  '=C<': { E: 4310, V: -5.5 },
  phenyl: { E: 31940, V: 71.4 },
  phenylene: { E: 31940, V: 52.4 },
  'ring (5 or more)': { E: 1050, V: 16 },
  'conjugated double bond': { E: 1670, V: -2.2 },
  COOH: { E: 27630, V: 28.5 },
  COO: { E: 18000, V: 18 },
  CO: { E: 17370, V: 10.8 },
  CHO: { E: 21350, V: 22.3 },
  OH: { E: 29800, V: 10 },
  'OH (disubstituted or on adjacent C)': { E: 21900, V: 13 },
  O: { E: 3350, V: 3.8 },
  NH2: { E: 12560, V: 19.2 },
  NH: { E: 8370, V: 4.5 },
  N: { E: 4190, V: -9 },
  CN: { E: 25530, V: 24 },
  CONH: { E: 33490, V: 9.5 },
  Cl: { E: 11550, V: 24 },
};
