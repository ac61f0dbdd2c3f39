import { badInput, nonNegative } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';
import { DAVIES_GROUP_IDS, DAVIES_GROUPS, DAVIES_REFUSED, isDaviesGroup } from './davies-groups';
import type { DaviesGroupId } from './davies-groups';
import { DAVIES_1957 } from './sources';

/** Where the scale starts: a substance with as much hydrophile as lipophile. */
const START = 7;
const TOP_OF_GRIFFIN = 20;

/** How many of each group a molecule holds; averages of a distribution need not be whole. */
export type GroupCounts = Partial<Record<DaviesGroupId, number>>;

/**
 * HLB by Davies' groups: 7 + Σ count × group number (lipophilic numbers are negative).
 *
 * @param groups counts by group id, each ≥ 0; fractions stand for an average chain length
 * @throws Problem `invalid-input` for no groups, a negative count, or a group without a number (a quaternary
 *   head, an amine soap, a phosphate, an ether sulfate)
 * Source: Davies 1957; each group's own source is added.
 */
export function daviesHlb(groups: Readonly<Record<string, number | undefined>>): Worked {
  const counted = Object.entries(groups).filter((entry) => entry[1] !== undefined);
  if (counted.length === 0)
    throw badInput('There are no groups to count.', 'Enter at least one group with its count.', 'groups');
  const terms = counted.map(([id, count]) => term(id, count ?? Number.NaN));
  const used = terms.filter((entry) => entry.count > 0);
  const total = used.reduce((sum, entry) => sum + entry.count * entry.number, START);
  const shown = used.map(
    ({ count, number }) => ` ${number < 0 ? '−' : '+'} ${show(count)} × ${show(Math.abs(number))}`,
  );
  const named = used.map(({ count, group }) => `${show(count)} of ${group}`).join('; ');
  const step = {
    says: `HLB by Davies’ groups: 7 + Σ group numbers (${named || 'no groups'})`,
    shows: `${START}${shown.join('')}`,
    result: total,
    unit: '',
  };
  return worked([step], sourcesOf(used), cautionsOf(total, used));
}

interface Term {
  group: string;
  count: number;
  number: number;
  source: Source;
  note: string;
}

function term(id: string, count: number): Term {
  const refused = Object.hasOwn(DAVIES_REFUSED, id) ? DAVIES_REFUSED[id] : undefined;
  if (refused)
    throw badInput(
      `HLB by groups is not known for ${refused}.`,
      'Use the supplier’s HLB or HLD, or trials; do not substitute another head’s number.',
      `groups.${id}`,
    );
  if (!isDaviesGroup(id))
    throw badInput(
      `“${id}” is not a group of Davies’ table.`,
      `Use one of: ${DAVIES_GROUP_IDS.join(', ')}.`,
      `groups.${id}`,
    );
  const { group, number, source, note } = DAVIES_GROUPS[id];
  return { group, number, source, note, count: nonNegative(count, `Count of ${group}`) };
}

function sourcesOf(terms: readonly Term[]): Source[] {
  const sources = [DAVIES_1957, ...terms.map((entry) => entry.source)];
  return sources.filter((source, index) => sources.indexOf(source) === index);
}

function cautionsOf(hlb: number, terms: readonly Term[]): string[] {
  const cautions = [
    'Davies and Griffin give different scales for ethoxylates: do not mix them in one blend.',
  ];
  if (hlb > TOP_OF_GRIFFIN)
    cautions.push(
      `${show(hlb)} lies beyond Griffin’s scale of 0 to 20; it is not a figure to average in a blend.`,
    );
  for (const { group, note } of terms) if (note) cautions.push(`${group}: ${note}.`);
  return cautions;
}
