import { largestRemainder } from '../../quantities/largest-remainder';
import { WHOLE_PPM } from '../../quantities/share';
import { badInput } from '../../working/inputs';
import type { FormulaContent } from '../formula';
import { formulaLines, formulaShares } from '../shares';

/** Puts shares in ppm on lines by id; the others stay as they are. */
export function withShares(content: FormulaContent, ppmOf: ReadonlyMap<string, number>): FormulaContent {
  return {
    ...content,
    phases: content.phases.map((phase) => ({
      ...phase,
      lines: phase.lines.map((line) => {
        const ppm = ppmOf.get(line.id);
        return ppm === undefined || line.toHundred ? line : { ...line, ppm };
      }),
    })),
  };
}

/** Divides a total by weights, exact to the ppm; alike where all of them are nothing. */
function spread(weights: readonly number[], total: number): number[] {
  const nothing = weights.every((weight) => weight === 0);
  return largestRemainder(nothing ? weights.map(() => 1) : weights, total, 1);
}

/**
 * Scales a group of lines to a total, in their own proportions, exact to the ppm. Locked lines and the q.s. line keep
 * what they have; the q.s. line, where there is one, then takes what is left.
 *
 * @throws Problem `invalid-input` where no line of the group may move, more than the whole is asked for, or nothing would
 * be left for q.s.
 */
export function scaledGroup(
  content: FormulaContent,
  lineIds: readonly string[],
  totalPpm: number,
  locked: ReadonlySet<string>,
): FormulaContent {
  const group = formulaLines(content).filter(({ id, toHundred }) => lineIds.includes(id) && !toHundred);
  const fixed = group.filter(({ id }) => locked.has(id)).reduce((sum, { ppm }) => sum + ppm, 0);
  const free = group.filter(({ id }) => !locked.has(id));
  if (free.length === 0)
    throw badInput('No line of the group may be changed.', 'Unlock one of them, or choose others.', 'group');
  if (!(totalPpm >= 0 && totalPpm <= WHOLE_PPM))
    throw badInput('A group comes to 0 to 100 % of the formula.', 'Ask for a share in between.', 'total');
  if (totalPpm < fixed)
    throw badInput(
      'The locked lines of the group alone come to more than that.',
      'Ask for more, or unlock one of them.',
      'total',
    );
  const shares = spread(
    free.map(({ ppm }) => ppm),
    Math.round(totalPpm - fixed),
  );
  const after = withShares(content, new Map(free.map(({ id }, at) => [id, shares[at] ?? 0])));
  refuseOverfull(after);
  return after;
}

/**
 * Brings a formula to exactly 100 % by distributing what is missing (or too much) over its free lines, in their own
 * proportions. A formula with a q.s. line is whole already.
 *
 * @throws Problem `invalid-input` where no line may move, or the locked ones alone pass 100 %
 */
export function distributed(content: FormulaContent, locked: ReadonlySet<string>): FormulaContent {
  const lines = formulaLines(content);
  if (lines.some(({ toHundred }) => toHundred)) return content;
  const free = lines.filter(({ id }) => !locked.has(id));
  const fixed = lines.filter(({ id }) => locked.has(id)).reduce((sum, { ppm }) => sum + ppm, 0);
  if (free.length === 0)
    throw badInput('Every line is locked.', 'Unlock the lines that may take up the rest.', 'locked');
  if (fixed > WHOLE_PPM)
    throw badInput('The locked lines alone pass 100 %.', 'Unlock one of them, or lower it.', 'locked');
  const shares = spread(
    free.map(({ ppm }) => ppm),
    WHOLE_PPM - fixed,
  );
  return withShares(content, new Map(free.map(({ id }, at) => [id, shares[at] ?? 0])));
}

function refuseOverfull(content: FormulaContent): void {
  const { byLine } = formulaShares(content);
  if ([...byLine.values()].some((ppm) => ppm < 0))
    throw badInput(
      'That leaves nothing for the q.s. line.',
      'Ask for less, or lower other lines first.',
      'total',
    );
}
