import type { Region } from '../locale/numbers';
import { pushText, withUnit, type Compared } from './compared';
import type { Difference } from './difference';
import { phaseLetter, type FormulaContent, type ProcedureStep } from './formula';

function stepFacts(content: FormulaContent, step: ProcedureStep, region: Region): Record<string, string> {
  const letters = content.phases.flatMap((phase, index) =>
    step.phaseIds.includes(phase.id) ? [phaseLetter(index)] : [],
  );
  return {
    phases: letters.join(', '),
    instruction: step.instruction,
    temperature: withUnit(step.temperatureC, ' °C', region),
    speed: withUnit(step.speedRpm, ' rpm', region),
    time: withUnit(step.minutes, ' min', region),
    'look for': step.lookFor,
    caution: step.caution,
  };
}

/** What differs in the procedure, step by step. */
export function stepDifferences({ before, after, region }: Compared): Difference[] {
  const found: Difference[] = [];
  const known = new Map(before.steps.map((step, index) => [step.id, { step, index }]));
  after.steps.forEach((step, index) => {
    const was = known.get(step.id);
    known.delete(step.id);
    const what = `Step ${index + 1}`;
    if (!was) {
      found.push({ area: 'step', kind: 'added', what, before: '', after: step.instruction });
      return;
    }
    const old = stepFacts(before, was.step, region);
    // The same phases under new letters are no change of the step.
    if (was.step.phaseIds.join() === step.phaseIds.join())
      old.phases = stepFacts(after, step, region).phases ?? '';
    for (const [name, text] of Object.entries(stepFacts(after, step, region)))
      pushText(found, 'step', `${what}, ${name}`, old[name] ?? '', text);
  });
  for (const { step, index } of known.values())
    found.push({
      area: 'step',
      kind: 'removed',
      what: `Step ${index + 1}`,
      before: step.instruction,
      after: '',
    });
  const kept = (steps: ProcedureStep[], others: ProcedureStep[]) =>
    steps.filter((step) => others.some((other) => other.id === step.id)).map((step) => step.id);
  if (kept(before.steps, after.steps).join() !== kept(after.steps, before.steps).join())
    found.push({
      area: 'step',
      kind: 'moved',
      what: 'Order of the steps',
      before: 'as it was',
      after: 'changed',
    });
  return found;
}
