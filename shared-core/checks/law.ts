import { KIND_FACTS } from '../products/product-kinds';
import { joined } from '../locale/words';
import { isBroken, type Judged } from '../limits/judged';
import { limitsWithoutSubject } from '../limits/judge';
import { NO_ADVICE } from '../limits/law';
import { regionsOf } from '../limits/situation';
import { allowanceWords, percentWords, productsWords, subjectWords, totalWords } from '../limits/words';
import type { Source } from '../working/working';
import type { CheckRule, Finding, FindingSeverity } from './check';
import type { FormulaFacts } from './facts';
import { phAdvice } from './ph-room';

function sourceOf({ limit }: Judged): Source {
  return { text: [limit.source, limit.asOf, limit.checked].filter(Boolean).join('; '), basis: 'user' };
}

/** A group's name stands in the plural where it is one: benzoates come to, sorbic acid and sorbates come to. */
function comesTo({ limit }: Judged): string {
  const several =
    limit.of === 'group' && limit.counting !== 'each by itself' && /[^s]s$| and /i.test(limit.subject);
  return several ? 'come to' : 'comes to';
}

function titleOf(judged: Judged): string {
  const { limit, region, verdict, forbiddenTo, ph } = judged;
  const subject = subjectWords(judged);
  if (forbiddenTo.length > 0) return `${subject} must not be used by ${joined(forbiddenTo)} (${region})`;
  if (verdict === 'above' || verdict === 'may be above') {
    const may = verdict === 'may be above' ? 'may come to' : comesTo(judged);
    return limit.rule === 'prohibited'
      ? `${subject}: not allowed here, found at ${percentWords(judged.total.high)} (${region})`
      : `${subject} ${may} ${totalWords(judged)}; ${allowanceWords(limit)} (${region})`;
  }
  if (ph === 'outside') return `Another pH is required for ${subject} (${region})`;
  return `${subject} ${comesTo(judged)} ${totalWords(judged)}; ${allowanceWords(limit)} (${region})`;
}

function severityOf({
  limit,
  time,
  certain,
  verdict,
  forbiddenTo,
  ph,
  total,
  most,
}: Judged): FindingSeverity {
  if (time === 'coming' || verdict === 'below least') return 'note';
  if (limit.rule === 'range of the active') return 'note';
  if (limit.standing !== 'law' && ph === 'outside' && verdict === 'within') return 'note';
  if (limit.standing !== 'law' || !certain) return 'warn';
  if (forbiddenTo.length > 0 || verdict === 'above') return 'stop';
  // Only towards the upper end of suppliers' ranges: surely too much where their middle is.
  if (verdict === 'may be above')
    return limit.rule === 'prohibited' || (most !== null && total.used > most) ? 'stop' : 'warn';
  return ph === 'outside' ? 'stop' : 'warn';
}

function adviceOn(judged: Judged, facts: FormulaFacts): string {
  const { limit, time, certain, verdict, ph, cautions, total } = judged;
  return [
    verdict === 'above' || verdict === 'may be above' ? 'Lower it on these lines together.' : '',
    verdict === 'may be above'
      ? `The suppliers’ ranges allow from ${percentWords(total.low)} to ${percentWords(total.high)}: ask them for closer figures.`
      : '',
    ph === 'outside'
      ? `The pH is to lie ${limit.phLow === null ? '' : `from ${limit.phLow} `}${limit.phHigh === null ? 'upwards' : `to ${limit.phHigh}`}; the target of this formula does not. ${phAdvice(facts, { low: limit.phLow, high: limit.phHigh, of: limit.subject }, 'leave it out')}`
      : '',
    time === 'coming' ? `Coming: it holds from ${limit.from}.` : '',
    certain
      ? ''
      : 'It depends on the kind of product, which this formula does not state: choose it under “Product and market”.',
    `Written for: ${productsWords(limit)}.`,
    limit.condition,
    ...cautions,
    limit.standing === 'law' ? '' : 'Advice, not law.',
    NO_ADVICE,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function findingOf(judged: Judged, facts: FormulaFacts): Finding {
  return {
    ruleId: 'law',
    severity: severityOf(judged),
    title: titleOf(judged),
    lines: [...new Set(judged.counted.flatMap(({ parts }) => parts.map(({ lineId }) => lineId)))],
    advice: adviceOn(judged, facts),
    source: sourceOf(judged),
  };
}

const OWN: Source = { text: 'the substances and limits of this library', basis: 'library' };

/** What could not be held against the law, said instead of left silent. */
function silences({ law, lawOf, content, used }: FormulaFacts): Finding[] {
  const found: Finding[] = [];
  const note = (title: string, advice: string, lines: string[] = []): void =>
    void found.push({
      ruleId: 'law',
      severity: 'note',
      title,
      lines,
      advice: `${advice} ${NO_ADVICE}`,
      source: OWN,
    });
  if (law === null || used.length === 0) return found;
  const without = regionsOf(content.market).filter(
    (region) => !law.limits.some(({ regions }) => regions.includes(region)),
  );
  if (without.length > 0)
    note(
      `No limits are recorded for ${joined(without)}`,
      'Nothing was checked against the law there. Add the examples, import a list, or record the limits under Substances and law.',
    );
  const free = lawOf?.contents.freeText ?? [];
  if (free.length > 0 && law.substances.length > 0)
    note(
      `Not in the table of substances, so counted against no limit: ${joined(free.map(({ written }) => written))}`,
      'Add the substance, or write its name as another name of the one that it is.',
      [...new Set(free.flatMap(({ lineIds }) => lineIds))],
    );
  const lost = limitsWithoutSubject(law);
  if (lost.length > 0)
    note(
      `${lost.length === 1 ? 'A limit is' : `${lost.length} limits are`} about nothing that the table of substances knows: ${joined(lost.slice(0, 3).map(({ subject }) => subject))}`,
      'Correct what it is about, or add the substance or its group.',
    );
  const { kind } = content.market;
  if (kind && KIND_FACTS[kind].use !== content.use)
    note(
      `The kind of product is ${KIND_FACTS[kind].use}, the formula says ${content.use}`,
      'The limits are taken as the formula says. Correct whichever is wrong.',
    );
  return found;
}

/** The limits of the library's table, each held against what the formula holds for the kind and region that it says. */
export const law: CheckRule = {
  id: 'law',
  name: 'Limits of law are met',
  tells: 'a substance breaks a limit of law that the library holds',
  judge: (facts) => [
    ...(facts.lawOf?.judged.filter(isBroken).map((one) => findingOf(one, facts)) ?? []),
    ...silences(facts),
  ],
};
