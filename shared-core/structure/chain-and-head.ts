import { badInput, between } from '../working/inputs';

/** A fatty chain by its trade name; carbons are those of the fatty acid or alcohol. */
interface Chain {
  label: string;
  /** SMILES of the alkyl group without its last carbon, which the head turns into CH2O or C(=O). */
  tail: string;
}

function saturated(carbons: number): string {
  return 'C'.repeat(carbons - 1);
}

/** Fatty chains that can be picked, C8 to C22 and the common unsaturated ones. */
export const CHAINS = {
  c8: { label: 'C8 capryl(yl)', tail: saturated(8) },
  c10: { label: 'C10 capr(yl), decyl', tail: saturated(10) },
  c12: { label: 'C12 lauric, lauryl', tail: saturated(12) },
  c14: { label: 'C14 myristic, myristyl', tail: saturated(14) },
  c16: { label: 'C16 palmitic, cetyl', tail: saturated(16) },
  c18: { label: 'C18 stearic, stearyl', tail: saturated(18) },
  'c18-iso': { label: 'C18 isostearic, isostearyl', tail: 'CC(C)CCCCCCCCCCCCCC' },
  'c18-1': { label: 'C18:1 oleic, oleyl', tail: 'CCCCCCCCC=CCCCCCCC' },
  'c18-1-oh': { label: 'C18:1 ricinoleic', tail: 'CCCCCCC(O)CC=CCCCCCCC' },
  'c18-2': { label: 'C18:2 linoleic', tail: 'CCCCCC=CCC=CCCCCCCC' },
  c20: { label: 'C20 arachidic, arachidyl', tail: saturated(20) },
  c22: { label: 'C22 behenic, behenyl', tail: saturated(22) },
  'c22-1': { label: 'C22:1 erucic', tail: 'CCCCCCCCC=CCCCCCCCCCCC' },
} as const satisfies Record<string, Chain>;
export type ChainId = keyof typeof CHAINS;

interface Head {
  label: string;
  /** What the number asked for counts; null when the head takes none. */
  counts: 'oxyethylene' | 'glycerol' | null;
  /** The SMILES from the chain's tail and the number. */
  build: (tail: string, count: number) => string;
}

const GLUCOSE_TAIL = 'OC1OC(CO)C(O)C(O)C1O';
/** The two carbons and oxygen of one unit, to follow a chain or an acid. */
const eo = (count: number): string => 'OCC'.repeat(count);

/** Heads that can be picked for a chain. Those that Davies cannot describe are kept, to say so. */
export const HEADS = {
  acid: { label: 'fatty acid', counts: null, build: (tail) => `${tail}C(=O)O` },
  'soap-na': { label: 'sodium soap', counts: null, build: (tail) => `${tail}C(=O)[O-].[Na+]` },
  'soap-k': { label: 'potassium soap', counts: null, build: (tail) => `${tail}C(=O)[O-].[K+]` },
  'soap-tea': {
    label: 'triethanolamine soap',
    counts: null,
    build: (tail) => `${tail}C(=O)[O-].OCC[NH+](CCO)CCO`,
  },
  alcohol: { label: 'fatty alcohol', counts: null, build: (tail) => `${tail}CO` },
  'peg-ether': {
    label: 'PEG-n ether of the alcohol',
    counts: 'oxyethylene',
    build: (tail, n) => `${tail}C${eo(n)}O`,
  },
  'peg-ester': {
    label: 'PEG-n ester of the acid',
    counts: 'oxyethylene',
    build: (tail, n) => `${tail}C(=O)${eo(n)}O`,
  },
  glycol: { label: 'glycol ester', counts: null, build: (tail) => `${tail}C(=O)OCCO` },
  'propylene-glycol': {
    label: 'propylene glycol ester',
    counts: null,
    build: (tail) => `${tail}C(=O)OCC(C)O`,
  },
  glyceryl: { label: 'glyceryl monoester', counts: null, build: (tail) => `${tail}C(=O)OCC(O)CO` },
  polyglyceryl: {
    label: 'polyglyceryl-n monoester',
    counts: 'glycerol',
    build: (tail, n) => `${tail}C(=O)${'OCC(O)C'.repeat(n)}O`,
  },
  sorbitan: { label: 'sorbitan monoester', counts: null, build: (tail) => `${tail}C(=O)OCC(O)C1OCC(O)C1O` },
  polysorbate: {
    label: 'PEG-n sorbitan monoester',
    counts: 'oxyethylene',
    build: (tail, n) => polysorbate(tail, n),
  },
  glucoside: { label: 'glucoside', counts: null, build: (tail) => `${tail}C${GLUCOSE_TAIL}` },
  'sulfate-na': { label: 'sodium sulfate', counts: null, build: (tail) => `${tail}COS(=O)(=O)[O-].[Na+]` },
  'ether-sulfate-na': {
    label: 'sodium PEG-n ether sulfate',
    counts: 'oxyethylene',
    build: (tail, n) => `${tail}C${eo(n)}OS(=O)(=O)[O-].[Na+]`,
  },
  'dimethyl-amine': { label: 'dimethyl amine', counts: null, build: (tail) => `${tail}CN(C)C` },
  'trimethyl-ammonium': {
    label: 'trimethyl ammonium chloride',
    counts: null,
    build: (tail) => `${tail}C[N+](C)(C)C.[Cl-]`,
  },
} as const satisfies Record<string, Head>;
export type HeadId = keyof typeof HEADS;

const MOST_UNITS = { oxyethylene: 100, glycerol: 20 } as const;

/**
 * The SMILES of a picked fatty chain with a picked head.
 *
 * @param count oxyethylene units (1 to 100) or glycerols (2 to 20); ignored by heads that take none
 * @throws Problem `invalid-input` for a count that is not whole or out of bounds
 */
export function smilesOfPick(chain: ChainId, head: HeadId, count: number | null): string {
  const picked: Head = HEADS[head];
  if (picked.counts === null) return picked.build(CHAINS[chain].tail, 0);
  const least = picked.counts === 'glycerol' ? 2 : 1;
  const what = picked.counts === 'glycerol' ? 'Number of glycerols' : 'Number of oxyethylene units';
  const units = between(count ?? Number.NaN, least, MOST_UNITS[picked.counts], what);
  if (!Number.isInteger(units))
    throw badInput(
      `${what} is ${units}; a single molecule holds a whole number.`,
      'Round it, or enter the % oxyethylene of the grade instead.',
      'count',
    );
  return picked.build(CHAINS[chain].tail, units);
}

/** The units are spread over the three free hydroxyls; where they sit changes no count. */
function polysorbate(tail: string, units: number): string {
  const arms = [0, 1, 2].map((arm) => `${eo(Math.floor((units + arm) / 3))}O`);
  return `${tail}C(=O)OCC(${arms[0]})C1OCC(${arms[1]})C1${arms[2]}`;
}
