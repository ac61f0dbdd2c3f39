import type { FormulaContent, FormulaLine, FormulaPhase, ProcedureStep } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';

/** A change of a formula's draft: the old content in, the new one out; what does not change is shared. */
export type Edit = (content: FormulaContent) => FormulaContent;

function swapped<T>(list: readonly T[], index: number, by: -1 | 1): T[] | null {
  const other = index + by;
  const here = list[index];
  const there = list[other];
  if (here === undefined || there === undefined) return null;
  const copy = [...list];
  copy[index] = there;
  copy[other] = here;
  return copy;
}

const withPhases = (content: FormulaContent, phases: FormulaPhase[] | null): FormulaContent =>
  phases ? { ...content, phases } : content;

/** Applies a change to one phase. */
export function changePhase(phaseId: string, part: Partial<FormulaPhase>): Edit {
  return (content) =>
    withPhases(
      content,
      content.phases.map((phase) => (phase.id === phaseId ? { ...phase, ...part } : phase)),
    );
}

export function addPhase(id: string): Edit {
  return (content) =>
    withPhases(content, [...content.phases, { id, title: '', temperatureC: null, lines: [] }]);
}

/** Takes a phase away with its lines, and out of the steps that name it. */
export function removePhase(phaseId: string): Edit {
  return (content) => ({
    ...content,
    phases: content.phases.filter((phase) => phase.id !== phaseId),
    steps: content.steps.map((step) =>
      step.phaseIds.includes(phaseId)
        ? { ...step, phaseIds: step.phaseIds.filter((id) => id !== phaseId) }
        : step,
    ),
  });
}

export function movePhase(phaseId: string, by: -1 | 1): Edit {
  return (content) =>
    withPhases(
      content,
      swapped(
        content.phases,
        content.phases.findIndex((phase) => phase.id === phaseId),
        by,
      ),
    );
}

/** Applies a change to one line, wherever it stands. */
export function changeLine(lineId: string, part: Partial<FormulaLine>): Edit {
  return (content) =>
    withPhases(
      content,
      content.phases.map((phase) =>
        phase.lines.some((line) => line.id === lineId)
          ? { ...phase, lines: phase.lines.map((line) => (line.id === lineId ? { ...line, ...part } : line)) }
          : phase,
      ),
    );
}

export function addLine(phaseId: string, line: FormulaLine): Edit {
  return (content) =>
    withPhases(
      content,
      content.phases.map((phase) =>
        phase.id === phaseId ? { ...phase, lines: [...phase.lines, line] } : phase,
      ),
    );
}

export function removeLine(lineId: string): Edit {
  return (content) =>
    withPhases(
      content,
      content.phases.map((phase) =>
        phase.lines.some((line) => line.id === lineId)
          ? { ...phase, lines: phase.lines.filter((line) => line.id !== lineId) }
          : phase,
      ),
    );
}

/** Puts a line before the line that stands at `index` of a phase; its own place counts as it was before. */
export function placeLine(lineId: string, phaseId: string, index: number): Edit {
  return (content) => {
    const from = content.phases.find((phase) => phase.lines.some((line) => line.id === lineId));
    const line = from?.lines.find((one) => one.id === lineId);
    if (!from || !line) return content;
    const at = from.lines.indexOf(line);
    const target = from.id === phaseId && at < index ? index - 1 : index;
    if (from.id === phaseId && at === target) return content;
    return withPhases(
      content,
      content.phases.map((phase) => {
        if (phase.id !== from.id && phase.id !== phaseId) return phase;
        const lines = phase.lines.filter((one) => one.id !== lineId);
        if (phase.id === phaseId) lines.splice(target, 0, line);
        return { ...phase, lines };
      }),
    );
  };
}

/** Moves a line one place up or down; past the end of its phase it goes into the neighbouring one. */
export function moveLine(lineId: string, by: -1 | 1): Edit {
  return (content) => {
    const at = content.phases.findIndex((phase) => phase.lines.some((line) => line.id === lineId));
    const phase = content.phases[at];
    if (!phase) return content;
    const index = phase.lines.findIndex((line) => line.id === lineId);
    if (by === -1 && index > 0) return placeLine(lineId, phase.id, index - 1)(content);
    if (by === 1 && index < phase.lines.length - 1) return placeLine(lineId, phase.id, index + 2)(content);
    const neighbour = content.phases[at + by];
    if (!neighbour) return content;
    return placeLine(lineId, neighbour.id, by === -1 ? neighbour.lines.length : 0)(content);
  };
}

/**
 * Makes a line the one that is q.s. to 100, or a fixed share again. A line that loses the mark keeps the share it
 * had by it, so that the total stays what it was.
 */
export function markToHundred(lineId: string, on: boolean): Edit {
  return (content) => {
    const { byLine } = formulaShares(content);
    return withPhases(
      content,
      content.phases.map((phase) => ({
        ...phase,
        lines: phase.lines.map((line) => {
          const wanted = line.id === lineId ? on : on ? false : line.toHundred;
          if (wanted === line.toHundred) return line;
          return wanted
            ? { ...line, toHundred: true }
            : { ...line, toHundred: false, ppm: Math.max(0, byLine.get(line.id) ?? line.ppm) };
        }),
      })),
    );
  };
}

export function addStep(id: string, phaseIds: string[]): Edit {
  const step: ProcedureStep = {
    ...{ id, phaseIds, instruction: '', temperatureC: null, speedRpm: null, minutes: null },
    ...{ lookFor: '', caution: '' },
  };
  return (content) => ({ ...content, steps: [...content.steps, step] });
}

export function changeStep(stepId: string, part: Partial<ProcedureStep>): Edit {
  return (content) => ({
    ...content,
    steps: content.steps.map((step) => (step.id === stepId ? { ...step, ...part } : step)),
  });
}

export function removeStep(stepId: string): Edit {
  return (content) => ({ ...content, steps: content.steps.filter((step) => step.id !== stepId) });
}

export function moveStep(stepId: string, by: -1 | 1): Edit {
  return (content) => {
    const steps = swapped(
      content.steps,
      content.steps.findIndex((step) => step.id === stepId),
      by,
    );
    return steps ? { ...content, steps } : content;
  };
}
