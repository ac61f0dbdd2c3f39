import type { Source } from '../working/working';
import { DAVIES_1957 } from './sources';

/** One row of the table of group numbers. `number` is added to 7, with its sign. */
export interface DaviesGroup {
  /** As it stands in the table. */
  group: string;
  number: number;
  source: Source;
  note: string;
}

const TABLE_COPIES: Source = {
  text: 'Davies’ table as given in Wikipedia, “Hydrophilic-lipophilic balance”',
  basis: 'read',
};

function row(group: string, number: number, source: Source, note = ''): DaviesGroup {
  return { group, number, source, note };
}

/** Davies' group numbers, by our id. Rows marked `memory` are to be checked before relying on them. */
export const DAVIES_GROUPS = {
  'sulfate-na': row('-SO4Na', 38.7, TABLE_COPIES, 'one newer copy of the table prints 38.6'),
  'carboxylate-k': row('-COOK', 21.1, TABLE_COPIES),
  'carboxylate-na': row('-COONa', 19.1, TABLE_COPIES),
  'sulfonate-na': row('-SO3Na (sulfonate)', 11, DAVIES_1957, 'about 11; not in every reproduction'),
  'tertiary-amine': row('tertiary amine N', 9.4, TABLE_COPIES),
  'ester-sorbitan-ring': row('ester, sorbitan ring', 6.8, TABLE_COPIES),
  ester: row('ester, free', 2.4, TABLE_COPIES),
  'carboxylic-acid': row('-COOH', 2.1, TABLE_COPIES),
  hydroxyl: row('-OH, free', 1.9, TABLE_COPIES),
  ether: row('-O- (ether)', 1.3, TABLE_COPIES),
  'hydroxyl-sorbitan-ring': row('-OH, sorbitan ring', 0.5, TABLE_COPIES),
  oxyethylene: row('-(CH2CH2O)- oxyethylene', 0.33, DAVIES_1957, '0.35 by plain count of its atoms'),
  carbon: row('-CH- , -CH2- , CH3- , =CH-', -0.475, TABLE_COPIES),
  oxypropylene: row(
    '-(CH2CH2CH2O)- / -(CH(CH3)CH2O)- oxypropylene',
    -0.15,
    DAVIES_1957,
    '−0.125 by plain count of its atoms',
  ),
  fluorocarbon: row('-CF2- , CF3-', -0.87, DAVIES_1957, 'a later addition (1970s), not of 1957'),
  'benzene-ring': row('benzene ring', -1.662, DAVIES_1957, 'a later addition, 3.5 CH2 units'),
} as const satisfies Record<string, DaviesGroup>;

export type DaviesGroupId = keyof typeof DAVIES_GROUPS;
export const DAVIES_GROUP_IDS = Object.keys(DAVIES_GROUPS) as DaviesGroupId[];

const NO_NUMBER = 'Davies’ table and its later additions give no number for it';

/** Heads that makers ask for and that have no group number, with why they are refused. */
export const DAVIES_REFUSED: Record<string, string> = {
  'quaternary-ammonium': `a quaternary ammonium head: ${NO_NUMBER}, and HLB does not describe cationics`,
  'amine-soap': `an amine soap: ${NO_NUMBER}; only sodium and potassium soaps have one`,
  phosphate: `a phosphate head: ${NO_NUMBER}`,
  'ether-sulfate': `an ether-sulfate head: ${NO_NUMBER}; the sulfate number was found on alkyl sulfates`,
};

export function isDaviesGroup(id: string): id is DaviesGroupId {
  return Object.hasOwn(DAVIES_GROUPS, id);
}
