import { badInput, finite } from '../working/inputs';
import type { Source } from '../working/working';

export const ORGANISM_TYPES = ['bacterium', 'yeast', 'mould'] as const;
export type OrganismType = (typeof ORGANISM_TYPES)[number];

/** What a challenge test counted of one organism: by how many powers of ten it had fallen, by the day. */
export interface OrganismResult {
  organism: string;
  type: OrganismType;
  logReductions: Readonly<Record<string, number>>;
}

export type TestVerdict = 'A' | 'B' | 'none' | 'pass' | 'fail';
export interface ChallengeVerdict {
  verdict: TestVerdict;
  /** What misses, in words. */
  why: string[];
}

/** What a standard asks of a kind of organism: a least reduction by the day, and from which on it must not grow again. */
interface Demand {
  least: Readonly<Record<string, number>>;
  /** Not higher than on the day before in the list; none where nothing is asked. */
  noIncrease: readonly (readonly [day: string, since: string])[];
}
type Criterion = Readonly<Record<OrganismType, Demand>>;

const demand = (least: Demand['least'], ...noIncrease: [string, string][]): Demand => ({ least, noIncrease });

export const CHALLENGE_SOURCES: Readonly<Record<ChallengeStandard, Source>> = {
  'ISO 11930': {
    text: 'ISO 11930 (2012 and 2019), Cosmetics, Microbiology, Evaluation of the antimicrobial protection of a cosmetic product, criteria A and B',
    basis: 'read',
  },
  'Ph. Eur. 5.1.3': {
    text: 'European Pharmacopoeia 5.1.3, Efficacy of antimicrobial preservation, topical preparations',
    basis: 'memory',
  },
  'USP 51': {
    text: 'United States Pharmacopeia <51>, Antimicrobial Effectiveness Testing, category 2',
    basis: 'memory',
  },
};

export const CHALLENGE_STANDARDS = ['ISO 11930', 'Ph. Eur. 5.1.3', 'USP 51'] as const;
export type ChallengeStandard = (typeof CHALLENGE_STANDARDS)[number];

/** By how much a later count may stand above the one before and still be no increase, log. */
const NO_INCREASE = 0.5;
/** Reports give tenths or hundredths of a log, whose differences are not exact in binary. */
const EXACT_TO = 1e-9;

const AFTER_7: [string, string][] = [
  ['14', '7'],
  ['28', '14'],
];
const FUNGI_A_EUR = demand({ '14': 2 }, ['28', '14']);
const FUNGI_B_EUR = demand({ '14': 1 }, ['28', '14']);
const FUNGI_USP = demand({ '14': -NO_INCREASE, '28': -NO_INCREASE });

const CRITERIA: Readonly<Record<ChallengeStandard, readonly (readonly [TestVerdict, Criterion])[]>> = {
  'ISO 11930': [
    [
      'A',
      {
        bacterium: demand({ '7': 3, '14': 3, '28': 3 }, ...AFTER_7),
        yeast: demand({ '7': 1, '14': 1, '28': 1 }, ...AFTER_7),
        mould: demand({ '14': 0, '28': 1 }),
      },
    ],
    [
      'B',
      {
        bacterium: demand({ '14': 3, '28': 3 }, ['28', '14']),
        yeast: demand({ '14': 1, '28': 1 }, ['28', '14']),
        mould: demand({ '14': 0, '28': 0 }, ['28', '14']),
      },
    ],
  ],
  'Ph. Eur. 5.1.3': [
    ['A', { bacterium: demand({ '2': 2, '7': 3 }, ['28', '7']), yeast: FUNGI_A_EUR, mould: FUNGI_A_EUR }],
    ['B', { bacterium: demand({ '14': 3 }, ['28', '14']), yeast: FUNGI_B_EUR, mould: FUNGI_B_EUR }],
  ],
  'USP 51': [['pass', { bacterium: demand({ '14': 2 }, ['28', '14']), yeast: FUNGI_USP, mould: FUNGI_USP }]],
};

function reading({ organism, logReductions }: OrganismResult, day: string): number {
  const held = logReductions[day];
  if (held === undefined)
    throw badInput(
      `${organism}: the reduction on day ${day} is missing.`,
      'Enter it: the standard asks for it.',
      'rows',
    );
  return finite(held, `${organism}, day ${day}`);
}

function faults(one: OrganismResult, criterion: Criterion): string[] {
  const { least, noIncrease } = criterion[one.type];
  const low = Object.entries(least).flatMap(([day, asked]) => {
    const got = reading(one, day);
    return got < asked ? [`${one.organism}: ${got} log on day ${day}, at least ${asked} asked`] : [];
  });
  const grown = noIncrease.flatMap(([day, since]) => {
    const [later, before] = [reading(one, day), reading(one, since)];
    return before - later > NO_INCREASE + EXACT_TO
      ? [`${one.organism}: it grew again between day ${since} and day ${day}, from ${before} to ${later} log`]
      : [];
  });
  return [...low, ...grown];
}

/**
 * What a preservative challenge test comes to by a standard's criteria.
 *
 * @returns the best criterion that all organisms meet (`A`, `B` or `none`; `pass` or `fail` for USP 51), and what misses
 * the one above it
 * @throws Problem `invalid-input` where a day that is asked for is missing
 */
export function judgeChallengeTest(
  standard: ChallengeStandard,
  organisms: readonly OrganismResult[],
): ChallengeVerdict {
  if (organisms.length === 0) throw badInput('There is no organism yet.', 'Enter what was counted.', 'rows');
  const why = new Set<string>();
  // The stricter criterion comes first: an organism that meets it need not meet the next as well.
  let left = organisms;
  for (const [verdict, criterion] of CRITERIA[standard]) {
    left = left.filter((one) => {
      const found = faults(one, criterion);
      for (const each of found) why.add(each);
      return found.length > 0;
    });
    if (left.length === 0) return { verdict, why: [...why] };
  }
  return { verdict: standard === 'USP 51' ? 'fail' : 'none', why: [...why] };
}

/** The days that a standard asks for, whichever criterion. */
export function daysAsked(standard: ChallengeStandard, type: OrganismType): string[] {
  const days = CRITERIA[standard].flatMap(([, criterion]) => {
    const { least, noIncrease } = criterion[type];
    return [...Object.keys(least), ...noIncrease.flat()];
  });
  return [...new Set(days)].sort((a, b) => Number(a) - Number(b));
}
