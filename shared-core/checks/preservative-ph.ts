import { figureValue } from '../materials/figure';
import { NOT_PROOF, type CheckRule, type Finding } from './check';
import type { LineFacts } from './facts';

/** Below this share of undissociated acid an organic-acid preservative is called out. Common practice, no source. */
const LOWEST_ACTIVE_FRACTION = 0.1;

const STEINBERG = {
  text: 'Steinberg D.C., The chemistry of preservatives, J. Cosmet. Sci. 56, 361 (2005): organic acids act undissociated only; the 10 % threshold is common practice',
  basis: 'read',
} as const;

function outsideWindow(line: LineFacts, ph: { low: number; high: number }): Finding[] {
  const window = line.material.figures.workingPh;
  const low = window?.low ?? null;
  const high = window?.high ?? null;
  if (!window || !((low !== null && ph.low < low) || (high !== null && ph.high > high))) return [];
  const works = [low !== null ? `from pH ${low}` : '', high !== null ? `to pH ${high}` : ''].filter(Boolean);
  return [
    {
      ruleId: 'preservative-ph',
      severity: 'warn',
      title: `${line.material.tradeName} works ${works.join(' ')}, the target is pH ${ph.low} to ${ph.high}`,
      lines: [line.lineId],
      advice: `Move the pH into its range, or choose a preservative for this pH. ${NOT_PROOF}`,
      source: { text: window.source || `working pH, ${window.provenance}`, basis: 'library' },
    },
  ];
}

function mostlyDissociated(line: LineFacts, ph: { high: number }): Finding[] {
  const pKa = figureValue(line.material.figures.pKa);
  if (pKa === null || line.material.figures.workingPh) return [];
  const active = 1 / (1 + 10 ** (ph.high - pKa));
  if (active >= LOWEST_ACTIVE_FRACTION) return [];
  return [
    {
      ruleId: 'preservative-ph',
      severity: 'warn',
      title: `At pH ${ph.high} only ${(active * 100).toPrecision(2)} % of ${line.material.tradeName} (pKa ${pKa}) is in its active, undissociated form`,
      lines: [line.lineId],
      advice: `Lower the pH, or choose a preservative for this pH. ${NOT_PROOF}`,
      source: STEINBERG,
    },
  ];
}

/** Each preservative works over the whole of the target pH range. */
export const preservativePh: CheckRule = {
  id: 'preservative-ph',
  name: 'Preservatives work at the target pH',
  judge({ lines, ph }) {
    const preservatives = lines.filter(
      (line) => line.ppm > 0 && line.material.functions.includes('preservative'),
    );
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
