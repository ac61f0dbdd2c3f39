import { lineText } from './text';

function isDay(day: string): boolean {
  const moment = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().startsWith(day);
}

/** A day as ISO 8601 writes it, or none. */
export const dayText = lineText(10).refine(
  (day) => day === '' || (/^\d{4}-\d{2}-\d{2}$/.test(day) && isDay(day)),
  'Write the day as year-month-day, such as 2026-07-31.',
);
