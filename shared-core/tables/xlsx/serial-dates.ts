/* Days as numbers: ECMA-376 Part 1, 18.17.4.1 (date conversion for serial values), the two backward-compatible date
   systems, which is what programs write whatever the workbook says of compatibility (MS-OI29500 on 18.2.28). */

const DAY = 86_400;
const MS_OF_DAY = 86_400_000;
/** Day 0 of the 1900 system from 1 March 1900 on, when its false 29 February (day 60) has been counted. */
const BASE_1900 = Date.UTC(1899, 11, 30);
const BASE_1904 = Date.UTC(1904, 0, 1);
const FALSE_LEAP_DAY = 60;
const FIRST_SURE_DAY = Date.UTC(1900, 2, 1);
const AFTER_LAST_DAY = Date.UTC(9999, 11, 31) + MS_OF_DAY;

/** The first serial number of the 1900 system that lies after the year 9999. */
export const AFTER_LAST_SERIAL = (AFTER_LAST_DAY - BASE_1900) / MS_OF_DAY;

const two = (number: number) => String(number).padStart(2, '0');

/** The day and the second of it that a serial number means; null where it means no day of the calendar. */
function dayOf(serial: number, from1904: boolean): { day: number; seconds: number } | null {
  const seconds = Math.round(serial * DAY);
  const number = Math.floor(seconds / DAY);
  if (number < (from1904 ? 0 : 1) || (!from1904 && number === FALSE_LEAP_DAY)) return null;
  const base = from1904 ? BASE_1904 : number < FALSE_LEAP_DAY ? BASE_1900 + MS_OF_DAY : BASE_1900;
  const day = base + number * MS_OF_DAY;
  return day < AFTER_LAST_DAY ? { day, seconds: seconds - number * DAY } : null;
}

/** `2026-03-01`, or `2026-03-01T09:30:00` where it has a time of day or `withTime` asks for it; to the second. */
export function dateOfSerial(serial: number, from1904: boolean, withTime: boolean): string | null {
  const found = dayOf(serial, from1904);
  if (!found) return null;
  const iso = new Date(found.day + found.seconds * 1000).toISOString();
  return withTime || found.seconds > 0 ? iso.slice(0, 19) : iso.slice(0, 10);
}

/** A time of day, or hours past 24 of a duration, of a share of days: `09:30`, `36:00:05`; to the second. */
export function timeOfSerial(serial: number): string {
  const total = Math.round(serial * DAY);
  const [hours, minutes, seconds] = [Math.floor(total / 3600), Math.floor(total / 60) % 60, total % 60];
  return `${two(hours)}:${two(minutes)}${seconds > 0 ? `:${two(seconds)}` : ''}`;
}

const ISO = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d)(?:[.,]\d+)?)?(?:Z|[+-]\d\d:?\d\d)?)?$/;

/** An ISO 8601 date without its zone and parts of a second, if it is a day of the calendar; else null. */
export function plainDate(text: string): string | null {
  const parts = ISO.exec(text);
  if (!parts) return null;
  const [year, month, day, hour, minute, second] = parts.slice(1).map((part) => Number(part ?? 0));
  if (hour! > 23 || minute! > 59 || second! > 59) return null;
  const date = new Date(0);
  date.setUTCFullYear(year!, month! - 1, day!);
  if (date.getUTCMonth() !== month! - 1 || date.getUTCDate() !== day!) return null;
  const daypart = text.slice(0, 10);
  return parts[4] === undefined ? daypart : `${daypart}T${two(hour!)}:${two(minute!)}:${two(second!)}`;
}

/** The serial number in the 1900 system of an ISO date; null before 1 March 1900, where programs differ by a day. */
export function serialOfDate(date: string): number | null {
  const plain = plainDate(date);
  if (plain === null) return null;
  const moment = Date.parse(`${plain.slice(0, 10)}T${plain.slice(11) || '00:00:00'}Z`);
  if (moment < FIRST_SURE_DAY) return null;
  return (moment - BASE_1900) / MS_OF_DAY;
}
