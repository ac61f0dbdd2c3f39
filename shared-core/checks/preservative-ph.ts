import { outsideWorkingPh, type PhRange } from '../emulsions/working-ph';
import type { Figure } from '../materials/figure';
import { acidShare, agentOf } from '../preservation/agents';
import { WHOLE_PPM } from '../quantities/share';
import { NOT_PROOF, type CheckRule, type Finding } from './check';
import { percentText, type LineFacts } from './facts';

/** Below this share of undissociated acid an organic-acid preservative is called out. Common practice, no source. */
const LOWEST_ACTIVE_FRACTION = 0.1;
/** Below this dose of undissociated acid, ppm of the formula, little is left that acts. Common practice, no source. */
const LOWEST_ACTIVE_PPM = 200;

const STEINBERG = {
  text: 'Steinberg D.C., The chemistry of preservatives, J. Cosmet. Sci. 56, 361 (2005): organic acids act undissociated only; the 10 % and 0.02 % thresholds are common practice',
  basis: 'read',
} as const;

function windowWords({ low, high }: Figure): string {
  return [low !== null ? `from pH ${low}` : '', high !== null ? `to pH ${high}` : '']
    .filter(Boolean)
    .join(' ');
}

function outsideWindow(line: LineFacts, ph: PhRange): Finding[] {
  const window = line.material.figures.workingPh;
  if (!window || !outsideWorkingPh(line.material, ph)) return [];
  return [
    {
      ruleId: 'preservative-ph',
      severity: 'warn',
      title: `${line.material.tradeName} works ${windowWords(window)}, the target is pH ${ph.low} to ${ph.high}`,
      lines: [line.lineId],
      advice: `Move the pH into its range, or choose a preservative for this pH. ${NOT_PROOF}`,
      source: { text: window.source || `working pH, ${window.provenance}`, basis: 'library' },
    },
  ];
}

/** The pKa to go by: the stated one, else the lower end of a range, which leaves the least of the acid active. */
function cautiousPka(figure: Figure | undefined): { pKa: number; range: boolean } | null {
  if (!figure) return null;
  const pKa = figure.value ?? figure.low ?? figure.high;
  return pKa === null ? null : { pKa, range: figure.value === null };
}

/** What a line holds as the acid that acts, ppm of the formula; the whole line where its names do not say. */
function asAcidPpm({ material, ppm }: LineFacts): number {
  const acids = material.composition.flatMap(({ inci, lowPpm }) => {
    const agent = agentOf(inci);
    return agent?.acid ? [(lowPpm * acidShare(agent, inci)) / WHOLE_PPM] : [];
  });
  return acids.length === 0 ? ppm : ppm * acids.reduce((sum, share) => sum + share, 0);
}

function mostlyDissociated(line: LineFacts, ph: PhRange): Finding[] {
  const known = cautiousPka(line.material.figures.pKa);
  if (!known) return [];
  const active = 1 / (1 + 10 ** (ph.high - known.pKa));
  if (active >= LOWEST_ACTIVE_FRACTION) return [];
  const dose = asAcidPpm(line) * active;
  const range = known.range ? ' Only a range is recorded for its pKa: the lower end is taken.' : '';
  return [
    {
      ruleId: 'preservative-ph',
      severity: dose < LOWEST_ACTIVE_PPM ? 'warn' : 'note',
      title: `At pH ${ph.high} only ${(active * 100).toPrecision(2)} % of ${line.material.tradeName} (pKa ${known.pKa}) is in its active, undissociated form`,
      lines: [line.lineId],
      advice: `As the acid that is about ${percentText(Math.round(dose))} of the formula. Lower the pH, or choose a preservative for this pH.${range} ${NOT_PROOF}`,
      source: STEINBERG,
    },
  ];
}

/** Each preservative works over the whole of the target pH range, and enough of it is in the form that acts. */
export const preservativePh: CheckRule = {
  id: 'preservative-ph',
  name: 'Preservatives work at the target pH',
  tells: 'a preservative does not work at the target pH',
  judge({ used, ph }) {
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
          advice: `Give the target specification a pH range. ${NOT_PROOF}`,
          source: STEINBERG,
        },
      ];
    }
    return dependent.flatMap((line) => [...outsideWindow(line, ph), ...mostlyDissociated(line, ph)]);
  },
};
