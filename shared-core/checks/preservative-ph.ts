import { outsideWorkingPh, type PhRange } from '../emulsions/working-ph';
import type { Figure } from '../materials/figure';
import { agentDoses, agentsWithin } from '../preservation/agents';
import { NOT_PROOF, type CheckRule, type Finding } from './check';
import { percentText, type FormulaFacts, type LineFacts } from './facts';
import { activeUpTo, cautiousPka, LOWEST_ACTIVE_FRACTION, phAdvice } from './ph-room';

/** Below this dose of undissociated acid, ppm of the formula, little is left that acts. Common practice, no source. */
const LOWEST_ACTIVE_PPM = 200;

const INSTEAD = 'choose a preservative for this pH';

const STEINBERG = {
  text: 'Steinberg D.C., The chemistry of preservatives, J. Cosmet. Sci. 56, 361 (2005): organic acids act undissociated only; the 10 % and 0.02 % thresholds are common practice',
  basis: 'read',
} as const;

function windowWords({ low, high }: Figure): string {
  return [low !== null ? `from pH ${low}` : '', high !== null ? `to pH ${high}` : '']
    .filter(Boolean)
    .join(' ');
}

function outsideWindow(line: LineFacts, ph: PhRange, facts: FormulaFacts): Finding[] {
  const window = line.material.figures.workingPh;
  if (!window || !outsideWorkingPh(line.material, ph)) return [];
  return [
    {
      ruleId: 'preservative-ph',
      severity: 'warn',
      title: `${line.material.tradeName} works ${windowWords(window)}, the target is pH ${ph.low} to ${ph.high}`,
      lines: [line.lineId],
      advice: `${phAdvice(facts, { low: window.low, high: window.high, of: line.material.tradeName }, INSTEAD)} ${NOT_PROOF}`,
      source: { text: window.source || `working pH, ${window.provenance}`, basis: 'library' },
    },
  ];
}

/** What a line holds as acids that act, ppm of the formula: at least, and at most where a supplier wrote names into one. */
interface AsAcid {
  least: number;
  most: number;
}

/** All of the line where its names do not say. */
function asAcidPpm(line: LineFacts): AsAcid {
  const named = line.material.composition.flatMap(({ inci }) => [...agentsWithin(inci)]);
  if (!named.some(({ acid }) => acid)) return { least: line.ppm, most: line.ppm };
  const acids = agentDoses([line]).filter(({ agent }) => agent.acid);
  const least = acids.reduce((sum, { ppm }) => sum + ppm, 0);
  // Names that share one amount cannot all have the whole of it.
  const most = least + Math.max(0, ...acids.map(({ unsaidPpm }) => unsaidPpm));
  return { least, most };
}

function doseWords({ least, most }: AsAcid, active: number): string {
  const [low, high] = [least, most].map((ppm) => percentText(Math.round(ppm * active)));
  if (low === high) return `As the acid that is about ${low} of the formula.`;
  return `As the acid that is ${least > 0 ? `from ${low} to ${high}` : `at most ${high}`} of the formula: its supplier wrote several names into one. Ask for the share of each.`;
}

function mostlyDissociated(line: LineFacts, ph: PhRange, facts: FormulaFacts): Finding[] {
  const known = cautiousPka(line.material.figures.pKa);
  if (!known) return [];
  const active = 1 / (1 + 10 ** (ph.high - known.pKa));
  if (active >= LOWEST_ACTIVE_FRACTION) return [];
  const dose = asAcidPpm(line);
  const asked = { low: null, high: activeUpTo(known.pKa), of: line.material.tradeName };
  const range = known.range ? ' Only a range is recorded for its pKa: the lower end is taken.' : '';
  return [
    {
      ruleId: 'preservative-ph',
      severity: dose.least * active < LOWEST_ACTIVE_PPM ? 'warn' : 'note',
      title: `At pH ${ph.high} only ${(active * 100).toPrecision(2)} % of ${line.material.tradeName} (pKa ${known.pKa}) is in its active, undissociated form`,
      lines: [line.lineId],
      advice: `${doseWords(dose, active)} ${phAdvice(facts, asked, INSTEAD)}${range} ${NOT_PROOF}`,
      source: STEINBERG,
    },
  ];
}

/** Each preservative works over the whole of the target pH range, and enough of it is in the form that acts. */
export const preservativePh: CheckRule = {
  id: 'preservative-ph',
  name: 'Preservatives work at the target pH',
  tells: 'a preservative does not work at the target pH',
  judge(facts) {
    const { used, ph } = facts;
    const preservatives = used.filter((line) => line.material.functions.includes('preservative'));
    const dependent = preservatives.filter(
      (line) => line.material.figures.workingPh || line.material.figures.pKa,
    );
    if (!ph) {
      if (dependent.length === 0) return [];
      return [
        {
          ruleId: 'preservative-ph',
          severity: 'note',
          title: 'No target pH, and the preservative depends on it',
          lines: dependent.map((line) => line.lineId),
          advice: `${dependent
            .slice(0, 1)
            .map(({ material: { figures, tradeName } }) => {
              const { low, high } = figures.workingPh ?? { low: null, high: null };
              return phAdvice(facts, { low, high, of: tradeName }, INSTEAD);
            })
            .join(' ')} ${NOT_PROOF}`,
          source: STEINBERG,
        },
      ];
    }
    return dependent.flatMap((line) => [
      ...outsideWindow(line, ph, facts),
      ...mostlyDissociated(line, ph, facts),
    ]);
  },
};
