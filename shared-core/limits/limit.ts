import { z } from 'zod';
import { blankContent, enteredShape, storedShape, type ContentOf } from '../record/field';
import { id } from '../record/id';
import { LIMIT_FIELDS } from './fields';

/** All that a library holds about a limit. */
export const storedLimit = storedShape(LIMIT_FIELDS);
export type LimitContent = ContentOf<typeof LIMIT_FIELDS>;

/** Whether both ends are given, can be meant, and stand in the wrong order. */
function areCrossed(low: number | null, high: number | null): boolean {
  return low !== null && high !== null && high >= 0 && low > high;
}

/** All that a maker can enter about one: a share where its rule asks one, and ends in their order. */
export const limitContent = enteredShape(LIMIT_FIELDS).superRefine((limit, context) => {
  const fault = (path: keyof LimitContent, message: string): void =>
    context.addIssue({ code: 'custom', path: [path], message });
  const asks = limit.rule === 'at most' || limit.rule === 'less than';
  if (asks && limit.percent === null) fault('percent', 'Give the limit in per cent of the product.');
  if (limit.rule === 'range of the active' && limit.percent === null && limit.minPercent === null)
    fault('percent', 'Give the least or the most of the active, in per cent.');
  // Of an end that is not given, or out of its own bounds, nothing is said of the other.
  if (areCrossed(limit.minPercent, limit.percent)) fault('minPercent', 'The least is above the most.');
  if (areCrossed(limit.phLow, limit.phHigh)) fault('phLow', 'The lower pH is above the upper one.');
  if (limit.rule === 'notice' && limit.labelPhrase === '' && limit.condition === '')
    fault('labelPhrase', 'A notice needs the words of the label, or the condition.');
  if (limit.from !== '' && limit.until !== '' && limit.until < limit.from)
    fault('until', 'It ends before it begins.');
  if (limit.regions.length === 0) fault('regions', 'Say in which region it holds.');
});

/** A limit in the library. */
export const limit = storedLimit.extend({
  id,
  revision: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});
export type Limit = z.infer<typeof limit>;

/** A limit of which nothing is known but its subject. */
export function blankLimit(subject: string): LimitContent {
  return { ...blankContent(LIMIT_FIELDS), subject };
}
