import type { FormulaContent } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import type { Material } from '../materials/material';
import { inciWords } from './material-words';

export type MaterialsById = Readonly<Record<string, Material | undefined>>;

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** Pairs of a name to hide and what to print instead, longest first so that no part of a name stays behind. */
function replacements(
  content: FormulaContent,
  materials: MaterialsById,
  tradeNames: boolean,
): [string, string][] {
  const used = formulaLines(content).flatMap((line) => materials[line.materialId] ?? []);
  const pairs = used.flatMap((material): [string, string][] => [
    ...material.offers.map((offer): [string, string] => [offer.supplier, 'the supplier']),
    ...(tradeNames ? [] : [[material.tradeName, inciWords(material)] as [string, string]]),
  ]);
  return pairs.filter(([hidden]) => hidden !== '').sort((a, b) => b[0].length - a[0].length);
}

/**
 * A formula as it may be shared: suppliers' names, and trade names unless asked for, are replaced wherever they
 * stand in its texts; the maker's notes stay behind. Names are found as whole words, in any case.
 */
export function forSharing(
  content: FormulaContent,
  materials: MaterialsById,
  tradeNames: boolean,
): FormulaContent {
  const rules = replacements(content, materials, tradeNames).map(
    ([hidden, shown]) =>
      [new RegExp(`(?<![\\p{L}\\p{N}])${escaped(hidden)}(?![\\p{L}\\p{N}])`, 'giu'), shown] as const,
  );
  const clean = (text: string): string =>
    rules.reduce((now, [rule, shown]) => now.replace(rule, () => shown), text);
  return {
    ...content,
    purpose: clean(content.purpose),
    notes: '',
    phases: content.phases.map((phase) => ({
      ...phase,
      title: clean(phase.title),
      lines: phase.lines.map((line) => ({ ...line, note: clean(line.note) })),
    })),
    steps: content.steps.map((step) => ({
      ...step,
      instruction: clean(step.instruction),
      lookFor: clean(step.lookFor),
      caution: clean(step.caution),
    })),
  };
}
