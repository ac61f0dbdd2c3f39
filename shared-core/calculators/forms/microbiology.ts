import {
  CHALLENGE_SOURCES,
  CHALLENGE_STANDARDS,
  daysAsked,
  judgeChallengeTest,
  ORGANISM_TYPES,
  type ChallengeStandard,
  type OrganismResult,
} from '../../microbiology/challenge-test';
import { COUNT_GROUPS, ISO_17516, judgeCount, logReduction, percentOfLog } from '../../microbiology/counts';
import { badInput } from '../../working/inputs';
import { sourceWords } from '../../working/source-words';
import type { Answer } from '../calculated';
import type { Entries, Form } from '../form';
import { one } from '../result';

const DAYS = ['2', '7', '14', '28'] as const;
const CFU = 'CFU per g or mL';
const NOT_PROOF =
  'Criteria as cited, not the standard itself: the laboratory’s report, the text in force and a qualified assessor decide.';

const choices = (of: readonly string[]): Record<string, string> =>
  Object.fromEntries(of.map((key) => [key, key]));
/** The one of a list that a form's choice names. */
function chosen<T extends string>(of: readonly T[], held: string): T {
  const found = of.find((one) => one === held);
  if (!found) throw badInput('Nothing is chosen yet.', 'Choose one.');
  return found;
}

function resultOf(row: Entries, index: number): OrganismResult {
  const reductions = DAYS.flatMap((day) => {
    const held = row.optional(`day${day}`);
    return held === null ? [] : [[day, held] as const];
  });
  return {
    organism: row.words('organism') || `organism ${index + 1}`,
    type: chosen(ORGANISM_TYPES, row.choice('type')),
    logReductions: Object.fromEntries(reductions),
  };
}

function challenge(of: Entries): Answer {
  const standard: ChallengeStandard = chosen(CHALLENGE_STANDARDS, of.choice('standard'));
  const found = judgeChallengeTest(standard, of.rows().map(resultOf));
  const good =
    found.verdict === 'A' || found.verdict === 'pass' ? true : found.verdict === 'B' ? null : false;
  const asked = ORGANISM_TYPES.map((type) => `${type}: days ${daysAsked(standard, type).join(', ')}`);
  return {
    results: [],
    verdicts: [
      {
        key: 'verdict',
        label: standard === 'USP 51' ? 'This test is a' : 'It meets criterion',
        verdict: found.verdict,
        good,
        why: found.why,
      },
    ],
    notes: [
      `Asked for: ${asked.join('; ')}.`,
      `${sourceWords(CHALLENGE_SOURCES[standard])}. ${NOT_PROOF}`,
      ...(standard === 'ISO 11930' && found.verdict === 'B'
        ? ['B holds only with protection besides the formula, such as a pack that lets nothing in.']
        : []),
    ],
  };
}

function count(of: Entries): Answer {
  const found = judgeCount(
    chosen(COUNT_GROUPS, of.choice('group')),
    of.number('count'),
    of.choice('specified') === 'absent',
  );
  return {
    results: [],
    verdicts: [
      {
        key: 'verdict',
        label: 'The count is',
        verdict: found.verdict,
        good: found.verdict === 'within',
        why: found.why,
      },
    ],
    notes: [`${sourceWords(ISO_17516)}. ${NOT_PROOF}`],
  };
}

/** What a laboratory reports of microbes, held against the standards. */
export const MICROBIOLOGY_FORMS = {
  'challenge-test': {
    name: 'Preservative challenge test',
    asks: 'Which criterion the logarithmic reductions of a report meet.',
    fields: [
      { key: 'standard', label: 'By', choices: choices(CHALLENGE_STANDARDS), start: CHALLENGE_STANDARDS[0] },
    ],
    lines: {
      one: 'organism',
      caption: 'Log reductions from the start, by the day',
      columns: [
        { key: 'organism', label: 'Organism', words: true },
        { key: 'type', label: 'Kind', choices: choices(ORGANISM_TYPES), start: ORGANISM_TYPES[0] },
        ...DAYS.map((day) => ({
          key: `day${day}`,
          label: `Day ${day}`,
          unit: 'log',
          min: -15,
          max: 15,
          optional: true,
        })),
      ],
    },
    compute: challenge,
  },
  'log-reduction': {
    name: 'Log reduction',
    asks: 'By how many powers of ten a count has fallen, and what that is in per cent.',
    fields: [
      { key: 'initial', label: 'Count at the start', unit: CFU, min: 0 },
      { key: 'final', label: 'Count later', unit: CFU, min: 0 },
    ],
    compute: (of) => {
      const log = logReduction(of.number('initial'), of.number('final'));
      return {
        results: [
          { ...one('log', 'Log reduction', log), digits: 2 },
          { ...one('percent', 'Reduction', percentOfLog(log.value)), digits: { min: 0, max: 5 } },
        ],
      };
    },
  },
  'log-to-percent': {
    name: 'Log reduction in per cent',
    asks: 'What a reported log reduction is in per cent.',
    fields: [{ key: 'log', label: 'Log reduction', unit: 'log', min: -15, max: 15 }],
    compute: (of) => ({
      results: [
        { ...one('percent', 'Reduction', percentOfLog(of.number('log'))), digits: { min: 0, max: 5 } },
      ],
    }),
  },
  'micro-limit': {
    name: 'Microbiological limit',
    asks: 'Whether a finished product’s count lies within ISO 17516.',
    fields: [
      { key: 'group', label: 'Product for', choices: choices(COUNT_GROUPS), start: COUNT_GROUPS[1] },
      { key: 'count', label: 'Total count', unit: CFU, min: 0 },
      {
        key: 'specified',
        label: 'Specified organisms',
        choices: { absent: 'absent in 1 g or 1 mL', found: 'one was found' },
        start: 'absent',
      },
    ],
    compute: count,
  },
} as const satisfies Record<string, Form>;
