import { benchTypeOf, type BenchType } from '../emulsions/bench/bench-state';
import type { Dose } from '../emulsions/conflicts/charge-bearers';
import { bringsWater, isEmulsifier } from '../emulsions/conflicts/recognise';
import { isOil } from '../emulsions/systems/oil-phase';
import type { FormulaContent, FormulaLine, FormulaPhase } from '../formulas/formula';
import { phaseLetter } from '../formulas/formula';
import { formulaShares, type FormulaShares } from '../formulas/shares';
import { lawOfFormula, type LawOfFormula } from '../limits/in-formula';
import type { Law } from '../limits/law';
import type { Material } from '../materials/material';
import type { CheckInput } from './check-input';

/** A line with its material, its share (ppm of the formula, the q.s. line's computed) and where it stands. */
export interface LineFacts extends Dose {
  line: FormulaLine;
  phase: FormulaPhase;
  phaseLetter: string;
  /** The temperature its phase reaches, °C; null when neither the phase nor a step that names it says. */
  phaseTemperature: number | null;
}

/** What the checks look at, worked out once. */
export interface FormulaFacts {
  content: FormulaContent;
  shares: FormulaShares;
  /** Lines whose material is known. */
  lines: LineFacts[];
  /** Lines whose material is not in the library. */
  orphans: FormulaLine[];
  /** Lines with a share above zero, their material known. */
  used: LineFacts[];
  emulsifiers: LineFacts[];
  /** What the emulsifiers have to emulsify, fatty alcohols included. */
  oils: LineFacts[];
  watery: LineFacts[];
  /** True for the product types that are emulsions. */
  isEmulsion: boolean;
  /** The type of emulsion; null for a product that is none. */
  emulsionType: BenchType | null;
  /** The target pH range as far as it is given. */
  ph: { low: number; high: number } | null;
  /** The day that is asked about, ISO 8601; null where none is. */
  onDay: string | null;
  /** The library's law; null where none is asked. */
  law: Law | null;
  /** What it says of the formula. */
  lawOf: LawOfFormula | null;
}

/** The temperature of a phase: its own, else the hottest of the steps that name it. °C */
export function phaseTemperature(content: FormulaContent, phase: FormulaPhase): number | null {
  if (phase.temperatureC !== null) return phase.temperatureC;
  const steps = content.steps
    .filter((step) => step.phaseIds.includes(phase.id) && step.temperatureC !== null)
    .map((step) => step.temperatureC ?? 0);
  return steps.length > 0 ? Math.max(...steps) : null;
}

function targetPh(content: FormulaContent): FormulaFacts['ph'] {
  const { phLow, phHigh } = content.target;
  const low = phLow ?? phHigh;
  const high = phHigh ?? phLow;
  return low === null || high === null ? null : { low, high };
}

/** Resolves lines, shares and materials for the checks. */
export function formulaFacts({ content, materials, law, onDay }: CheckInput): FormulaFacts {
  const shares = formulaShares(content);
  const lines: LineFacts[] = [];
  const orphans: FormulaLine[] = [];
  content.phases.forEach((phase, index) => {
    const temperature = phaseTemperature(content, phase);
    for (const line of phase.lines) {
      const material: Material | undefined = materials.get(line.materialId);
      if (!material) {
        orphans.push(line);
        continue;
      }
      const ppm = shares.byLine.get(line.id) ?? 0;
      lines.push({
        lineId: line.id,
        material,
        ppm,
        line,
        phase,
        phaseLetter: phaseLetter(index),
        phaseTemperature: temperature,
      });
    }
  });
  const used = lines.filter((line) => line.ppm > 0);
  return {
    content,
    shares,
    lines,
    orphans,
    used,
    emulsifiers: used.filter((line) => isEmulsifier(line.material)),
    oils: used.filter((line) => isOil(line.material)),
    watery: used.filter((line) => bringsWater(line.material)),
    isEmulsion: content.productType.endsWith('emulsion'),
    emulsionType: benchTypeOf(content.productType),
    ph: targetPh(content),
    onDay: onDay ?? null,
    law: law ?? null,
    lawOf: law && onDay ? lawOfFormula(content, (id) => materials.get(id), law, onDay) : null,
  };
}

/** What lines come to, ppm of the formula. */
export function sumPpm(lines: readonly LineFacts[]): number {
  return lines.reduce((sum, line) => sum + line.ppm, 0);
}

/** A share as it is read: "12.5 %", without trailing zeros, at most four decimals. */
export function percentText(ppm: number): string {
  return `${Number((ppm / 10_000).toFixed(4))} %`;
}

/** Names of lines for a sentence: "A, B and C". */
export function namesOf(lines: readonly LineFacts[]): string {
  const names = [...new Set(lines.map((line) => line.material.tradeName))];
  const last = names.pop() ?? '';
  return names.length > 0 ? `${names.join(', ')} and ${last}` : last;
}
