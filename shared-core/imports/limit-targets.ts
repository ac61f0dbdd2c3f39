import { LIMIT_FIELDS } from '../limits/fields';
import { blankLimit, limitContent, type LimitContent } from '../limits/limit';
import type { Field, Fields } from '../record/field';
import type { Fault, Values } from './row';
import type { Target } from './target';

const FIELDS = LIMIT_FIELDS as Fields;
const DAYS = new Set(['from', 'fromOnShelf', 'until']);
const BEFORE = 'limit.';

function targetOfField(key: string, field: Field): Target {
  const { label, shape } = field;
  const named = { key: `${BEFORE}${key}`, label };
  if (DAYS.has(key)) return { ...named, reading: { kind: 'date' } };
  const isShare = shape.kind === 'number' && shape.unit?.startsWith('%');
  return { ...named, reading: isShare ? { ...shape, unit: '%' } : shape };
}

/** Everything of a limit that a table can fill, in the order of its form. Derived from its fields. */
export const LIMIT_TARGETS: readonly Target[] = Object.entries(FIELDS).map(([key, field]) =>
  targetOfField(key, field),
);

/** The limit that a row says: what it says nothing of is blank. */
export function limitFrom(values: Values): {
  content: LimitContent | null;
  subject: string;
  faults: Fault[];
} {
  const held: Record<string, unknown> = { ...blankLimit('') };
  for (const [key, value] of Object.entries(values))
    if (key.startsWith(BEFORE)) held[key.slice(BEFORE.length)] = value;
  const read = limitContent.safeParse(held);
  const faults = (read.error?.issues ?? []).map(({ path, message }): Fault => {
    return { heading: FIELDS[String(path[0])]?.label ?? '', message };
  });
  return { content: read.success ? read.data : null, subject: String(held.subject), faults };
}
