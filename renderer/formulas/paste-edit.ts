import {
  phaseLetter,
  type FormulaContent,
  type FormulaLine,
  type FormulaPhase,
} from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import type { Edit } from './edits';

/** A pasted line, ready to stand in a formula, with the letter of its phase; null for the phase pasted into. */
export interface PlacedPaste {
  line: FormulaLine;
  phase: string | null;
}

function letters(content: FormulaContent): Map<string, string> {
  return new Map(content.phases.map((phase, at) => [phaseLetter(at), phase.id]));
}

/**
 * Adds pasted lines in their order, each to the phase of its letter or to the phase pasted into. A letter that the
 * formula has not makes a phase. Only one line is q.s. to 100: one that stands there keeps the mark.
 */
export function addPasted(phaseId: string, pasted: readonly PlacedPaste[], newId: () => string): Edit {
  return (content) => {
    const known = letters(content);
    const made: FormulaPhase[] = [];
    for (const { phase } of pasted) {
      if (phase === null || known.has(phase)) continue;
      const id = newId();
      known.set(phase, id);
      made.push({ id, title: '', temperatureC: null, lines: [] });
    }
    let marked = formulaLines(content).some((line) => line.toHundred);
    const added = pasted.map(({ line, phase }) => {
      const toHundred = line.toHundred && !marked;
      marked ||= toHundred;
      return {
        phaseId: (phase === null ? undefined : known.get(phase)) ?? phaseId,
        line: { ...line, toHundred },
      };
    });
    const phases = [...content.phases, ...made].map((phase) => {
      const own = added.filter((one) => one.phaseId === phase.id).map((one) => one.line);
      return own.length === 0 ? phase : { ...phase, lines: [...phase.lines, ...own] };
    });
    return { ...content, phases };
  };
}
