import { z } from 'zod';
import { DAVIES_GROUP_IDS } from '../emulsions/davies-groups';
import { id } from '../record/id';
import { CHARGES } from '../materials/vocabulary';
import { lineText } from '../quantities/text';
import { CHAINS, HEADS, type ChainId, type HeadId } from '../structure/chain-and-head';
import { amount } from './amount';

export const HLB_WAYS = ['pick', 'smiles', 'figures', 'groups'] as const;
export type HlbWay = (typeof HLB_WAYS)[number];

const groups = z.partialRecord(z.enum(DAVIES_GROUP_IDS), z.number().min(0).max(10_000));

export const hlbRequest = z.object({
  of: z.literal('hlb'),
  way: z.enum(HLB_WAYS),
  chain: z.enum(Object.keys(CHAINS) as ChainId[]),
  head: z.enum(Object.keys(HEADS) as HeadId[]),
  /** Oxyethylene or glycerol units of a picked head. */
  count: amount,
  smiles: lineText(4000),
  charge: z.enum(CHARGES).nullable(),
  oxyethylenePercent: amount,
  polyolPercent: amount,
  saponificationNumber: amount,
  acidNumber: amount,
  hydrophilicMolarMass: amount,
  molarMass: amount,
  /** Counted by hand. */
  groups,
  /** The groups found in a structure, as corrected; null leaves them as found. */
  corrected: groups.nullable(),
  /** The material whose recorded HLB stands beside the computed ones. */
  knownMaterialId: id.nullable(),
});
export type HlbRequest = z.infer<typeof hlbRequest>;

/** Where the calculator starts: a picked molecule, as it needs no figures. */
export const BLANK_HLB: HlbRequest = {
  of: 'hlb',
  way: 'pick',
  chain: 'c18',
  head: 'peg-ether',
  count: 20,
  smiles: '',
  charge: null,
  oxyethylenePercent: null,
  polyolPercent: null,
  saponificationNumber: null,
  acidNumber: null,
  hydrophilicMolarMass: null,
  molarMass: null,
  groups: {},
  corrected: null,
  knownMaterialId: null,
};
