import { COMMON_PRACTICE } from '../working/working';
import { bringsWater } from '../emulsions/conflicts/recognise';
import type { CheckRule, Finding } from './check';
import { namesOf, type LineFacts } from './facts';

/** A price older than this says little of whether a material can still be had. Common practice, no source. */
const OLD_YEARS = 2;

function note(lines: readonly LineFacts[], title: string, advice: string): Finding[] {
  if (lines.length === 0) return [];
  return [
    {
      ruleId: 'supply',
      severity: 'note',
      title: `${title}: ${namesOf(lines)}`,
      lines: lines.map((line) => line.lineId),
      advice,
      source: COMMON_PRACTICE,
    },
  ];
}

/** The day so many years before another, ISO 8601. */
const yearsBefore = (day: string, years: number): string =>
  `${String(Number(day.slice(0, 4)) - years).padStart(4, '0')}${day.slice(4)}`;

/** What the library knows of whether a material can be had: its status, its suppliers, how old their last price is. */
export const supply: CheckRule = {
  id: 'supply',
  name: 'Materials that can be bought',
  tells:
    'a material is on trial, has no supplier, or no price of the last two years; the library does not know what is left in stock, or how old it is',
  judge({ used, onDay }) {
    const bought = used.filter(({ material }) => material.status !== 'archived');
    const onTrial = bought.filter(({ material }) => material.status === 'on trial');
    const without = bought.filter(({ material }) => material.offers.length === 0 && !bringsWater(material));
    const since = onDay === null ? null : yearsBefore(onDay, OLD_YEARS);
    const stale = bought.filter(
      ({ material: { offers } }) =>
        since !== null && offers.length > 0 && offers.every(({ date }) => date < since),
    );
    return [
      ...note(
        onTrial,
        'On trial',
        'A sample may not be what is delivered later, nor be delivered at all: agree on a specification with the supplier before the formula depends on it.',
      ),
      ...note(
        without,
        'No supplier recorded',
        'Record who sells it, with pack and price: without it no cost, and no second source when it runs short.',
      ),
      ...note(
        stale,
        `No price of the last ${OLD_YEARS} years`,
        'Ask whether it is still made, and record the price with its date.',
      ),
    ];
  },
};
