import type { Charge } from '../materials/vocabulary';
import { Problem } from '../problems/problem';
import type { Source, Worked } from '../working/working';
import { daviesHlb } from './davies';
import type { GroupCounts } from './davies';
import { griffinEster, griffinEthoxylate, griffinMass, griffinPolyol } from './griffin';

export const HLB_METHODS = {
  ethoxylate: 'Griffin, ethoxylate: E/5',
  polyol: 'Griffin, oxyethylene and polyol: (E + P)/5',
  ester: 'Griffin, ester: 20 × (1 − S/A)',
  mass: 'Griffin, mass fraction: 20 × Mh/M',
  davies: 'Davies, groups',
} as const;
export type HlbMethod = keyof typeof HLB_METHODS;

/** What is known of an emulsifier; null for what is not. Per cent by mass, g/mol, mg KOH/g. */
export interface HlbInput {
  charge: Charge | null;
  oxyethylenePercent: number | null;
  polyolPercent: number | null;
  saponificationNumber: number | null;
  acidNumber: number | null;
  /** Why S and A do not describe it, where its structure says so. */
  notPolyolEster: string | null;
  hydrophilicMolarMass: number | null;
  molarMass: number | null;
  groups: GroupCounts | null;
  /** Parts without a group number, with why; any of them rules Davies out. */
  withoutNumber: readonly string[];
  /** The published or supplier's figure, to set beside the computed ones. */
  known: { value: number; source: Source } | null;
}

/** One method's answer, or why it gives none. */
export type MethodOutcome =
  | { method: HlbMethod; label: string; applies: true; worked: Worked }
  | { method: HlbMethod; label: string; applies: false; reason: string };

export interface HlbComparison {
  methods: MethodOutcome[];
  known: HlbInput['known'];
  /** Over the methods that apply and the known value; null when there is none. */
  spread: { low: number; high: number } | null;
  cautions: string[];
}

/** Nothing known: where filling in the figures starts. */
export const NOTHING_KNOWN: HlbInput = {
  charge: null,
  oxyethylenePercent: null,
  polyolPercent: null,
  saponificationNumber: null,
  acidNumber: null,
  notPolyolEster: null,
  hydrophilicMolarMass: null,
  molarMass: null,
  groups: null,
  withoutNumber: [],
  known: null,
};

/**
 * HLB by every method, side by side. A method that does not apply, or whose figures are bad, says why; none is
 * averaged with another, as their scales differ.
 */
export function hlbByAllMethods(input: HlbInput): HlbComparison {
  const methods = [
    outcome('ethoxylate', () => byEthoxylate(input)),
    outcome('polyol', () => byPolyol(input)),
    outcome('ester', () => byEster(input)),
    outcome('mass', () => byMass(input)),
    outcome('davies', () => byGroups(input)),
  ];
  const values = methods.flatMap((one) => (one.applies ? [one.worked.value] : []));
  const all = input.known ? [...values, input.known.value] : values;
  const spread = all.length > 0 ? { low: Math.min(...all), high: Math.max(...all) } : null;
  return { methods, known: input.known, spread, cautions: cautionsOf(input, spread) };
}

/** A method's answer, or the reason why not, as a text. */
type Attempt = Worked | string;

function outcome(method: HlbMethod, attempt: () => Attempt): MethodOutcome {
  const label = HLB_METHODS[method];
  try {
    const result = attempt();
    if (typeof result === 'string') return { method, label, applies: false, reason: result };
    return { method, label, applies: true, worked: result };
  } catch (cause) {
    if (!(cause instanceof Problem)) throw cause;
    return { method, label, applies: false, reason: `${cause.message} ${cause.advice}` };
  }
}

/** Griffin's scale was made for non-ionics. */
function ionic(input: HlbInput): string | null {
  return input.charge === null || input.charge === 'non-ionic'
    ? null
    : `It is ${input.charge}; Griffin’s methods describe non-ionics only.`;
}

function byEthoxylate(input: HlbInput): Attempt {
  const refused = ionic(input);
  if (refused) return refused;
  if (input.oxyethylenePercent === null) return 'Its % oxyethylene is not known.';
  if (input.oxyethylenePercent === 0) return 'It holds no oxyethylene.';
  if ((input.polyolPercent ?? 0) > 0) return 'A polyol is part of its hydrophile: use (E + P)/5.';
  return griffinEthoxylate(input.oxyethylenePercent);
}

function byPolyol(input: HlbInput): Attempt {
  const refused = ionic(input);
  if (refused) return refused;
  if (input.polyolPercent === null) return 'Its % polyol is not known.';
  if (input.polyolPercent === 0) return 'It holds no polyol.';
  return griffinPolyol(input.oxyethylenePercent ?? 0, input.polyolPercent);
}

function byEster(input: HlbInput): Attempt {
  const refused = ionic(input);
  if (refused) return refused;
  if (input.notPolyolEster !== null) return input.notPolyolEster;
  if (input.saponificationNumber === null || input.acidNumber === null)
    return 'It is not an ester, or its saponification value and its acid’s acid value are not known.';
  return griffinEster(input.saponificationNumber, input.acidNumber);
}

function byMass(input: HlbInput): Attempt {
  const refused = ionic(input);
  if (refused) return refused;
  if (input.hydrophilicMolarMass === null || input.molarMass === null)
    return 'Its molar mass or that of its hydrophilic part is not known.';
  if (input.hydrophilicMolarMass === 0) return 'It holds no oxyethylene or polyol to weigh.';
  return griffinMass(input.hydrophilicMolarMass, input.molarMass);
}

function byGroups(input: HlbInput): Attempt {
  if (input.withoutNumber.length > 0) return `It holds ${input.withoutNumber.join('; and ')}.`;
  if (input.groups === null) return 'Its groups are not known.';
  return daviesHlb(input.groups);
}

function cautionsOf(input: HlbInput, spread: HlbComparison['spread']): string[] {
  const cautions: string[] = [];
  if (spread && spread.high - spread.low > 1)
    cautions.push(
      `The figures run from ${spread.low.toFixed(1)} to ${spread.high.toFixed(1)}: Griffin’s and Davies’ scales differ, so use one scale through a blend.`,
    );
  if (input.charge !== null && input.charge !== 'non-ionic')
    cautions.push('For an ionic emulsifier an HLB alone decides nothing: mind its partners and try it.');
  cautions.push('HLB belongs to a supplier’s grade: where its data sheet states one, that goes first.');
  return cautions;
}
