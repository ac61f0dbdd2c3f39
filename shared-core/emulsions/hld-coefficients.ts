import type { Source } from '../working/working';

/** Temperature at which the HLD constants are stated, °C. */
export const HLD_REFERENCE_CELSIUS = 25;

const SALAGER: Source = {
  text: 'Salager J.-L. et al., Optimum formulation of surfactant/water/oil systems for minimum interfacial tension or phase behavior, SPE J. 19, 107-115 (1979)',
  basis: 'memory',
};
const BOURREL: Source = {
  text: 'Bourrel M., Salager J.-L., Schechter R.S., Wade W.H., A correlation for phase behavior of nonionic surfactants, J. Colloid Interface Sci. 75, 451-461 (1980)',
  basis: 'memory',
};
const ACOSTA: Source = {
  text: 'Acosta E., Colloids Surf. A 320, 193-204 (2008); Acosta E. et al., Langmuir 19, 186-195 (2003); Acosta E., Yuan J., Bhakta A., J. Surfact. Deterg. 11, 145-158 (2008)',
  basis: 'memory',
};

export interface HldCoefficient {
  symbol: 'K' | 'αT' | 'cT' | 'b';
  value: number;
  /** What it holds for. */
  domain: string;
  source: Source;
  note: string;
}

/** Published constants to choose from; never filled in unasked. All are from memory. */
export const HLD_COEFFICIENTS: readonly HldCoefficient[] = [
  { symbol: 'K', value: 0.16, domain: 'alkylbenzene sulfonates', source: SALAGER, note: '' },
  { symbol: 'K', value: 0.17, domain: 'sulfosuccinates', source: ACOSTA, note: '' },
  {
    symbol: 'K',
    value: 0.1,
    domain: 'alkyl sulfates and carboxylate soaps',
    source: SALAGER,
    note: '0.10 to 0.19 across head groups',
  },
  {
    symbol: 'K',
    value: 0.15,
    domain: 'ethoxylated non-ionics',
    source: BOURREL,
    note: '0.15 to 0.17 in use',
  },
  { symbol: 'αT', value: 0.01, domain: 'ionic, per K', source: SALAGER, note: '' },
  { symbol: 'cT', value: 0.06, domain: 'ethoxylated non-ionic, per K', source: BOURREL, note: '' },
  {
    symbol: 'b',
    value: 0.13,
    domain: 'ethoxylated non-ionic with NaCl, per g/100 mL',
    source: BOURREL,
    note: '',
  },
  {
    symbol: 'b',
    value: 0.1,
    domain: 'ethoxylated non-ionic with CaCl2, per g/100 mL',
    source: BOURREL,
    note: '',
  },
];
