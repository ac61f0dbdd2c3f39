import { percentFromPpm } from '../quantities/share';
import { factorOf } from '../substances/counted-as';
import type { Substance } from '../substances/substance';
import { substanceIndex, type SubstanceIndex } from '../substances/substance-index';
import { amountOf, type Amount, type Bringing, type Contents, type Present } from './contents';
import { factorInSum, isConverted, ofNoneAllowed, type Counted, type Judged, type Verdict } from './judged';
import type { Law } from './law';
import type { Limit } from './limit';
import { passes } from './share-of-limit';
import { appliesTo, limitKindsOf, timeOf, type Situation } from './situation';

const KEPT = new WeakMap<SubstanceIndex, Map<string, readonly Substance[] | null>>();

/** The substances that a limit is about; null where the table has none by that name. Looked up once a table. */
export function subjectsOf(
  { subject, of }: Pick<Limit, 'subject' | 'of'>,
  index: SubstanceIndex,
): readonly Substance[] | null {
  const known = KEPT.get(index) ?? new Map<string, readonly Substance[] | null>();
  KEPT.set(index, known);
  const key = `${of} ${subject}`;
  if (!known.has(key)) known.set(key, lookUp({ subject, of }, index));
  return known.get(key) ?? null;
}

function lookUp(limit: Pick<Limit, 'subject' | 'of'>, index: SubstanceIndex): readonly Substance[] | null {
  if (limit.of === 'group') {
    const members = index.members(limit.subject);
    return members.length > 0 ? members : null;
  }
  const one = index.find(limit.subject);
  return one ? [one] : null;
}

function servesPurpose(parts: readonly Bringing[], { purpose }: Limit): boolean {
  if (purpose === null) return true;
  if (purpose === 'other than preservative')
    return parts.some(({ material }) => !material.functions.includes('preservative'));
  return parts.some(({ material }) => material.functions.includes(purpose));
}

/** What a formula holds of a limit's substances, where it is for what the limit asks: of those counted together, any one. */
function forPurpose(limit: Limit, subjects: readonly Substance[], { present }: Contents): Present[] {
  const held = subjects.flatMap(({ id }) => present.get(id) ?? []);
  if (limit.counting === 'each by itself') return held.filter(({ parts }) => servesPurpose(parts, limit));
  const all = held.flatMap(({ parts }) => parts);
  return servesPurpose(all, limit) ? held : [];
}

function ofForm(parts: readonly Bringing[], { nanoForm }: Limit): Bringing[] {
  return nanoForm === 'any form'
    ? [...parts]
    : parts.filter(({ nano }) => nano === (nanoForm === 'nano only'));
}

const inPercent = ({ low, used, high }: Amount): Amount => ({
  low: percentFromPpm(low),
  used: percentFromPpm(used),
  high: percentFromPpm(high),
});
const times = ({ low, used, high }: Amount, by: number): Amount => ({
  low: low * by,
  used: used * by,
  high: high * by,
});

/** A substance's own limit in a sum of shares: the strictest that is written for it alone, else the sum's own. */
function ownLimit(one: Substance, sum: Limit, { law, index, situation }: Ground): number | null {
  const own = law.limits.filter(
    (other) =>
      other.id !== sum.id &&
      other.of === 'substance' &&
      (other.rule === 'at most' || other.rule === 'less than') &&
      other.percent !== null &&
      other.expressedAs === sum.expressedAs &&
      index.find(other.subject)?.id === one.id &&
      appliesTo(other, situation) === 'yes' &&
      timeOf(other, situation.onDay) === 'in force',
  );
  const percents = own.flatMap(({ percent }) => (percent === null ? [] : [percent]));
  return percents.length > 0 ? Math.min(...percents) : sum.percent;
}

interface Ground {
  law: Law;
  index: SubstanceIndex;
  situation: Situation;
}

function countedBy(limit: Limit, present: readonly Present[], ground: Ground): Counted[] {
  const { index } = ground;
  const reference = limit.expressedAs === '' ? null : index.find(limit.expressedAs);
  return present.flatMap(({ substance, parts }): Counted[] => {
    const own = ofForm(parts, limit);
    if (own.length === 0 || amountOf(own).high <= 0) return [];
    return [
      {
        substance,
        parts: own,
        amount: inPercent(amountOf(own)),
        factor: factorOf(substance, reference, index),
        ownPercent:
          limit.counting === 'by shares of their limits' ? ownLimit(substance, limit, ground) : null,
      },
    ];
  });
}

function totalOf(counted: readonly Counted[]): Amount {
  return amountOf(counted.map((one) => times(one.amount, factorInSum(one))));
}

function verdictOf(limit: Limit, counted: readonly Counted[], total: Amount, most: number | null): Verdict {
  const forbidden = amountOf(ofNoneAllowed(counted).map(({ amount }) => amount));
  if (forbidden.high > 0) return forbidden.low > 0 ? 'above' : 'may be above';
  const converted = isConverted(counted);
  switch (limit.rule) {
    case 'notice':
      return 'notice';
    case 'prohibited':
      return total.low > 0 ? 'above' : 'may be above';
    case 'range of the active':
      if (most !== null && passes(total.high, most, { converted })) break;
      return limit.minPercent !== null && passes(limit.minPercent, total.used, { converted })
        ? 'below least'
        : 'within';
  }
  if (most === null) return 'cannot tell';
  const holding = { strict: limit.rule === 'less than', converted };
  if (passes(total.low, most, holding)) return 'above';
  return passes(total.high, most, holding) ? 'may be above' : 'within';
}

function phOf({ phLow, phHigh }: Limit, { ph }: Situation): Judged['ph'] {
  if (phLow === null && phHigh === null) return null;
  if (!ph) return 'unknown';
  return ph.low >= (phLow ?? 0) && ph.high <= (phHigh ?? 14) ? 'within' : 'outside';
}

function cautionsOn(limit: Limit, counted: readonly Counted[], index: SubstanceIndex): string[] {
  const ranged = counted.some(({ amount }) => amount.low !== amount.high);
  const written = counted.flatMap(({ parts }) => parts).filter(({ written: name }) => /\(and\)/i.test(name));
  return [
    ...(limit.expressedAs !== '' && !index.find(limit.expressedAs)
      ? [
          `It is to be counted as ${limit.expressedAs}, which is not in the table of substances: each counts as it is. Add it, or correct the limit.`,
        ]
      : []),
    ...ofNoneAllowed(counted).map(
      ({ substance }) =>
        `Nothing of ${substance.name} is allowed by its own limit, so any of it is too much.`,
    ),
    ...new Set(counted.flatMap(({ factor }) => (factor.unknown === null ? [] : [factor.unknown]))),
    ...(ranged || written.length > 0
      ? ['Suppliers’ ranges are compared with the limit at their upper end, the worst case.']
      : []),
  ];
}

function judgedOf(limit: Limit, counted: Counted[], applies: 'yes' | 'open', ground: Ground): Judged {
  const { situation, index } = ground;
  const total = totalOf(counted);
  const most =
    limit.rule === 'prohibited' || limit.rule === 'notice'
      ? null
      : limit.counting === 'by shares of their limits'
        ? 100
        : limit.percent;
  const asOne = amountOf(counted.map(({ amount, factor }) => times(amount, factor.value)));
  const carries =
    limit.labelPhrase !== '' &&
    (limit.phraseAbove === null ||
      passes(asOne.high, limit.phraseAbove, { converted: isConverted(counted) }));
  return {
    limit,
    region: situation.region,
    time: timeOf(limit, situation.onDay) === 'coming' ? 'coming' : 'in force',
    certain: applies === 'yes',
    counted,
    total,
    most,
    verdict: verdictOf(limit, counted, total, most),
    ph: phOf(limit, situation),
    forbiddenTo: limit.notForUsers.filter((user) => situation.market.users.includes(user)),
    phrase: carries ? limit.labelPhrase : '',
    cautions: cautionsOn(limit, counted, index),
  };
}

/**
 * Holds every limit of a region that is about something in a formula against it: each substance summed over all lines
 * and blends, at the worst case of suppliers' ranges, converted as the limit counts it.
 *
 * @param contents what the formula holds, by substance
 * @returns the limits that apply, or may apply once the kind of product is said; those of the past are left out
 */
export function judgeLimits(law: Law, contents: Contents, situation: Situation): Judged[] {
  const index = substanceIndex(law.substances);
  const ground = { law, index, situation };
  const words = limitKindsOf(situation.market);
  return law.limits.flatMap((limit): Judged[] => {
    const applies = appliesTo(limit, situation, words);
    if (applies === 'no' || timeOf(limit, situation.onDay) === 'past') return [];
    const subjects = subjectsOf(limit, index) ?? [];
    const counted = countedBy(limit, forPurpose(limit, subjects, contents), ground);
    if (counted.length === 0) return [];
    if (limit.counting !== 'each by itself') return [judgedOf(limit, counted, applies, ground)];
    return counted.map((one) => judgedOf(limit, [one], applies, ground));
  });
}

/** Limits about something that the table of substances does not know: they are held against nothing. */
export function limitsWithoutSubject(law: Law): Limit[] {
  const index = substanceIndex(law.substances);
  return law.limits.filter((limit) => subjectsOf(limit, index) === null);
}
