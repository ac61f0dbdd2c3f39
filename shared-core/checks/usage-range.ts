import type { Finding, CheckRule } from './check';
import { percentText, type FormulaFacts, type LineFacts } from './facts';

/** Lines of one material counted together: usage is a share of the whole formula. */
function byMaterial(lines: readonly LineFacts[]): LineFacts[][] {
  const groups = new Map<string, LineFacts[]>();
  for (const line of lines) {
    groups.set(line.material.id, [...(groups.get(line.material.id) ?? []), line]);
  }
  return [...groups.values()];
}

function judgeMaterial(group: LineFacts[]): Finding[] {
  const material = group[0]?.material;
  const usage = material?.usage;
  const ppm = group.reduce((sum, line) => sum + line.ppm, 0);
  if (!material || !usage || ppm <= 0) return [];
  const above = usage.maxPpm !== null && ppm > usage.maxPpm;
  const below = usage.minPpm !== null && ppm < usage.minPpm;
  if (!above && !below) return [];
  const end = percentText((above ? usage.maxPpm : usage.minPpm) ?? 0);
  return [
    {
      ruleId: 'usage-range',
      severity: above ? 'warn' : 'note',
      title: `${material.tradeName} at ${percentText(ppm)} is ${above ? `above its highest use of ${end}` : `below its lowest use of ${end}`}`,
      lines: group.map((line) => line.lineId),
      advice: above
        ? 'Lower it, or check the supplier’s specification for this use.'
        : 'It may have no effect at this share: raise it, or leave it out.',
      source: { text: usage.source || `usage range, ${usage.provenance}`, basis: 'library' },
    },
  ];
}

/** Each material within the usage range recorded on it, over all its lines. */
export const usageRange: CheckRule = {
  id: 'usage-range',
  name: 'Each material within its usage range',
  tells: 'a share lies outside its supplier’s range',
  judge: ({ lines }: FormulaFacts) => byMaterial(lines).flatMap(judgeMaterial),
};
