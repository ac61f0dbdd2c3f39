import { shownMargin } from '../../exposure/shown-margin';
import { formatMoney } from '../../locale/money';
import { formatNumber, formatPercent, type Region } from '../../locale/numbers';
import type { Currency } from '../../quantities/money';
import { WHOLE_PPM } from '../../quantities/share';
import type { Consequences, Ends } from './consequences';

/** One figure that follows from a formula, before and after a change. */
export interface ChangedFigure {
  label: string;
  before: string;
  after: string;
  /** By how much, in words; empty where that says nothing. */
  change: string;
}

/** A finding of the checks that a change brings or takes away. */
export interface ChangedFinding {
  kind: 'new' | 'gone';
  ruleId: string;
  severity: Consequences['findings'][number]['severity'];
  title: string;
}

/** What a change of a formula brings with it. */
export interface ChangedConsequences {
  /** Only those that differ, unless all are asked for. */
  figures: ChangedFigure[];
  findings: ChangedFinding[];
  /** The order of the label before and after; null where it stays. */
  label: { before: string[]; after: string[] } | null;
}

interface Wording {
  region: Region;
  currency: Currency;
}

/** With its sign; empty where it rounds to nothing: “+0” beside two figures that differ would only confuse. */
function signed(value: number, digits: number, region: Region): string {
  const size = Number(Math.abs(value).toFixed(digits));
  if (size === 0) return '';
  return `${value < 0 ? '−' : '+'}${formatNumber(size, region, { min: 0, max: digits })}`;
}

function inPercent(value: number, region: Region): string {
  const change = signed(value, 1, region);
  return change && `${change} %`;
}

const shownOrNot = (value: number | null, digits: number, unit: string, region: Region): string =>
  value === null ? 'not known' : `${formatNumber(value, region, { min: 0, max: digits })}${unit}`;

function figure(
  label: string,
  [before, after]: readonly [number | null, number | null],
  { digits, unit = '', region }: { digits: number; unit?: string; region: Region },
): ChangedFigure {
  return {
    label,
    before: shownOrNot(before, digits, unit, region),
    after: shownOrNot(after, digits, unit, region),
    change: before === null || after === null ? '' : signed(after - before, digits, region),
  };
}

function range(label: string, before: Ends | null, after: Ends | null, region: Region): ChangedFigure {
  const words = (one: Ends | null): string => {
    if (!one) return 'not known';
    const [low, high] = [one.low, one.high].map((value) => formatNumber(value, region, { min: 0, max: 2 }));
    return low === high ? `${low}\u00a0%` : `${low} to ${high}\u00a0%`;
  };
  const change =
    before && after && before.low === before.high && after.low === after.high ? after.low - before.low : 0;
  return { label, before: words(before), after: words(after), change: signed(change, 2, region) };
}

function cost(before: Consequences, after: Consequences, { region, currency }: Wording): ChangedFigure {
  const words = ({ cost: { perKgMinor, coveredPpm } }: Consequences): string => {
    if (coveredPpm === 0) return 'no prices';
    const whole = formatMoney(perKgMinor, currency, region);
    return coveredPpm >= WHOLE_PPM
      ? whole
      : `${whole} for the ${formatPercent(coveredPpm, region)} with a price`;
  };
  const [was, is] = [before.cost.perKgMinor, after.cost.perKgMinor];
  const comparable = was > 0 && before.cost.coveredPpm === after.cost.coveredPpm;
  return {
    label: 'Raw materials per kg',
    before: words(before),
    after: words(after),
    change: comparable ? inPercent((100 * (is - was)) / was, region) : '',
  };
}

type Exposed = { dose: number; margin: number | null } | undefined;

function exposureWords(one: Exposed, region: Region): string {
  if (!one) return 'none';
  const dose = formatNumber(Number(one.dose.toPrecision(3)), region, { min: 0, max: 9 });
  const margin =
    one.margin === null
      ? ''
      : `, margin ${formatNumber(shownMargin(one.margin), region, { min: 0, max: 1 })}`;
  return `${dose} mg/kg per day${margin}`;
}

function relativeWords(was: Exposed, is: Exposed, region: Region): string {
  const relative = was && is && was.dose > 0 ? (100 * (is.dose - was.dose)) / was.dose : 0;
  return inPercent(relative, region);
}

/** "higher for 6 of them, lower for 15". */
function higherLower(more: number, less: number): string {
  const said = [more > 0 ? `higher for ${more}` : '', less > 0 ? `lower for ${less}` : ''];
  return `${said.filter(Boolean).join(', ')} of them`;
}

/** Substances with a margin of safety one by one; of the others how many are more, and how many less. */
function exposures(before: Consequences, after: Consequences, region: Region): ChangedFigure[] {
  const names = [...new Set([...before.exposure.keys(), ...after.exposure.keys()])].sort();
  const pairs = names.map((name) => [name, before.exposure.get(name), after.exposure.get(name)] as const);
  const known = pairs.filter(([, was, is]) => (was ?? is)?.margin !== null);
  const others = pairs.filter(([, was, is]) => (was ?? is)?.margin === null);
  const more = others.filter(([, was, is]) => (is?.dose ?? 0) > (was?.dose ?? 0) * (1 + 1e-9)).length;
  const less = others.filter(([, was, is]) => (is?.dose ?? 0) < (was?.dose ?? 0) * (1 - 1e-9)).length;
  const told = known.map(([name, was, is]) => ({
    label: `Exposure to ${name}`,
    before: exposureWords(was, region),
    after: exposureWords(is, region),
    change: relativeWords(was, is, region),
  }));
  if (more + less === 0) return told;
  const label = 'Exposure to substances without a recorded point of departure';
  return [...told, { label, before: '', after: higherLower(more, less), change: '' }];
}

/** What heating takes, in the unit in which it is told beside a formula. */
const wattHours = ({ heatingKwhPerKg }: Consequences): number | null =>
  heatingKwhPerKg === null ? null : heatingKwhPerKg * 1000;

function findings(before: Consequences, after: Consequences): ChangedFinding[] {
  const key = ({ ruleId, title }: Consequences['findings'][number]): string => `${ruleId} ${title}`;
  const [was, is] = [before, after].map((one) => new Set(one.findings.map(key)));
  return [
    ...after.findings
      .filter((one) => !was?.has(key(one)))
      .map(({ ruleId, severity, title }): ChangedFinding => ({ kind: 'new', ruleId, severity, title })),
    ...before.findings
      .filter((one) => !is?.has(key(one)))
      .map(({ ruleId, severity, title }): ChangedFinding => ({ kind: 'gone', ruleId, severity, title })),
  ];
}

/**
 * What a change of a formula brings with it, in words: figures that differ, findings that come or go, the order of
 * the label.
 */
export function changedConsequences(
  before: Consequences,
  after: Consequences,
  wording: Wording,
): ChangedConsequences {
  const { region } = wording;
  const hlb = { digits: 1, region };
  const mmol = { digits: 2, unit: '\u00a0mmol in 100\u00a0g', region };
  const all = [
    cost(before, after, wording),
    figure('Required HLB', [before.requiredHlb, after.requiredHlb], hlb),
    figure('Offered HLB', [before.offeredHlb, after.offeredHlb], hlb),
    figure('Acid', [before.equivalents.acid, after.equivalents.acid], mmol),
    figure('Base', [before.equivalents.base, after.equivalents.base], mmol),
    figure('Oil phase', [before.oilPhasePercent, after.oilPhasePercent], {
      digits: 2,
      unit: '\u00a0%',
      region,
    }),
    range('Solids', before.solidsPercent, after.solidsPercent, region),
    range('Electrolyte', before.electrolytePercent, after.electrolytePercent, region),
    range('Natural origin, with water', before.naturalOrigin, after.naturalOrigin, region),
    figure('Heating', [wattHours(before), wattHours(after)], { digits: 1, unit: '\u00a0Wh/kg', region }),
    ...exposures(before, after, region),
  ];
  const same = before.label.join('\n') === after.label.join('\n');
  return {
    figures: all.filter((one) => one.before !== one.after),
    findings: findings(before, after),
    label: same ? null : { before: before.label, after: after.label },
  };
}
