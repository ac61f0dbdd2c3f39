import type { Region } from './numbers';

/** "2026-03-31" names a day; with a time it is a moment, and its day depends on where the reader is. */
const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** Whether that is a day of the calendar: 30 February would pass for a day in March. */
function isDay(iso: string): boolean {
  const moment = new Date(`${iso}T00:00:00Z`);
  return DAY.test(iso) && !Number.isNaN(moment.getTime()) && moment.toISOString().startsWith(iso);
}

function show(iso: string, region: Region, style: Intl.DateTimeFormatOptions, timeZone?: string): string {
  const moment = new Date(DAY.test(iso) ? `${iso}T00:00:00Z` : iso);
  if (Number.isNaN(moment.getTime()) || (DAY.test(iso) && !isDay(iso)))
    throw new RangeError(`Not an ISO 8601 date: ${iso}`);
  const zone = DAY.test(iso) ? 'UTC' : timeZone;
  return new Intl.DateTimeFormat(region, { ...style, timeZone: zone }).format(moment);
}

/**
 * A date as the region writes it.
 * @param iso a day (2026-03-31) or a moment in ISO 8601
 * @param timeZone IANA name for moments; the reader's own when left out
 * @throws RangeError when `iso` is no date
 */
export function formatDate(iso: string, region: Region, timeZone?: string): string {
  return show(iso, region, { dateStyle: 'medium' }, timeZone);
}

/** A moment with hours and minutes, as the region writes it. @throws RangeError when `iso` is no date */
export function formatMoment(iso: string, region: Region, timeZone?: string): string {
  return show(iso, region, { dateStyle: 'medium', timeStyle: 'short' }, timeZone);
}

/** A day in words, or what stands in its place as it is: a library may hold what is no day, or none. */
export function dayWords(day: string, region: Region): string {
  return isDay(day) ? formatDate(day, region) : day;
}
