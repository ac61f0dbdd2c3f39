import { partPpm } from '../materials/composition';
import type { Material } from '../materials/material';
import { nameKey } from '../substances/names';
import { substanceIndex } from '../substances/substance-index';
import { WHOLE_PPM } from '../quantities/share';
import type { CheckRule, Finding } from './check';
import { percentText, type FormulaFacts, type LineFacts } from './facts';

const CAUTION =
  'A limit is as the maker recorded it, not legal advice: check the text in force, and let a qualified assessor decide.';

/** What a recorded limit is about: one INCI substance, or a blend as a whole where it names none. */
interface Limit {
  /** The key of its INCI name; null for the blend itself. */
  substance: string | null;
  name: string;
  material: Material;
  ppm: number;
  source: string;
}

/** The one INCI name that a limit is about: the only one, or the only one that its note names. */
function limitedSubstance(material: Material): string | null {
  const [first, ...others] = material.composition;
  if (first && others.length === 0) return first.inci;
  const note = ` ${nameKey(material.legalLimit?.note ?? '')} `;
  // By whole words: glycerin is no part of ethylhexylglycerin.
  const named = material.composition.filter((part) => note.includes(` ${nameKey(part.inci)} `));
  return named.length === 1 ? (named[0]?.inci ?? null) : null;
}

/** The limits of a formula's materials, the strictest for each substance. */
function limitsOf(lines: readonly LineFacts[]): Limit[] {
  const strictest = new Map<string, Limit>();
  for (const { material } of lines) {
    if (!material.legalLimit) continue;
    const inci = limitedSubstance(material);
    const key = inci ? nameKey(inci) : `blend ${material.id}`;
    const limit = {
      substance: inci ? nameKey(inci) : null,
      name: inci ?? material.tradeName,
      material,
      ppm: material.legalLimit.ppm,
      source: material.legalLimit.source,
    };
    const known = strictest.get(key);
    if (!known || limit.ppm < known.ppm) strictest.set(key, limit);
  }
  return [...strictest.values()];
}

/** How much of the formula a limit counts on one line: computed, and at the upper end of the supplier's range. */
function counted(limit: Limit, line: LineFacts): { ppm: number; highPpm: number } {
  if (limit.substance === null) {
    const ppm = line.material.id === limit.material.id ? line.ppm : 0;
    return { ppm, highPpm: ppm };
  }
  const part = line.material.composition.find((one) => nameKey(one.inci) === limit.substance);
  if (!part) return { ppm: 0, highPpm: 0 };
  return { ppm: (line.ppm * partPpm(part)) / WHOLE_PPM, highPpm: (line.ppm * part.highPpm) / WHOLE_PPM };
}

/** Room for the binary noise of summed products, in ppm; far below anything that is weighed. */
const NOISE = 1e-6;

function judgeLimit(limit: Limit, lines: readonly LineFacts[]): Finding[] {
  const parts = lines.map((line) => ({ line, ...counted(limit, line) })).filter((part) => part.highPpm > 0);
  const ppm = parts.reduce((sum, part) => sum + part.ppm, 0);
  const highPpm = parts.reduce((sum, part) => sum + part.highPpm, 0);
  if (highPpm <= limit.ppm + NOISE) return [];
  const exceeded = ppm > limit.ppm + NOISE;
  return [
    {
      ruleId: 'legal-limit',
      severity: exceeded ? 'stop' : 'warn',
      title: exceeded
        ? `${limit.name} comes to ${percentText(ppm)}, above the recorded limit of ${percentText(limit.ppm)}`
        : `${limit.name} may reach ${percentText(highPpm)} at the upper end of the supplier’s range; the recorded limit is ${percentText(limit.ppm)}`,
      lines: parts.map((part) => part.line.lineId),
      advice: `Lower it on these lines together. ${CAUTION}`,
      source: { text: limit.source, basis: 'user' },
    },
  ];
}

/**
 * Legal limits as recorded on the materials, each counted over all materials that bring the INCI substance, as the
 * law counts it. A limit on a blend that names none of its substances is held against the blend as a whole. Where the
 * library's table of limits speaks of the substance, that is held against it instead (`law`).
 */
export const legalLimit: CheckRule = {
  id: 'legal-limit',
  name: 'Recorded legal limits are met',
  tells: 'a substance exceeds the limit that is recorded on its material',
  judge({ lines, law, lawOf }: FormulaFacts) {
    const used = lines.filter((line) => line.ppm > 0);
    const index = substanceIndex(law?.substances ?? []);
    const judged = new Set(
      lawOf?.judged.flatMap(({ counted: parts }) => parts.map(({ substance }) => substance.id)) ?? [],
    );
    const open = limitsOf(used).filter(
      ({ substance, name }) => substance === null || !judged.has(index.find(name)?.id ?? ''),
    );
    return open.flatMap((limit) => judgeLimit(limit, used));
  },
};
