import { CURRENCIES, type Currency } from '../quantities/money';
import { monthOf } from './month-names';
import { quantityOf, type DecimalMark } from './quantity';

/** Signs that stand for one currency only, as languages write them (CLDR); a bare dollar, crown or yen and yuan does not say whose. */
const SIGNS: Readonly<Record<string, Currency>> = {
  '€': 'EUR',
  euro: 'EUR',
  '£': 'GBP',
  '£gb': 'GBP',
  us$: 'USD',
  $us: 'USD',
  ca$: 'CAD',
  $ca: 'CAD',
  a$: 'AUD',
  au$: 'AUD',
  $au: 'AUD',
  nz$: 'NZD',
  $nz: 'NZD',
  skr: 'SEK',
  nkr: 'NOK',
  dkr: 'DKK',
  'sfr.': 'CHF',
  fr: 'CHF',
  'fr.': 'CHF',
  zł: 'PLN',
  kč: 'CZK',
  '₹': 'INR',
  'jp¥': 'JPY',
  r$: 'BRL',
  br$: 'BRL',
  '₺': 'TRY',
};

/** The currency that a text names by its code or sign; null where that cannot be told. */
export function currencyOf(text: string): Currency | null {
  const bare = text.trim();
  const code = CURRENCIES.find((one) => one === bare.toUpperCase());
  return code ?? SIGNS[bare.toLowerCase()] ?? null;
}

/** The currency that a heading names among other words, such as “Preis (EUR/kg)”; null for none. */
export function currencyIn(heading: string): Currency | null {
  const found = new Set(
    heading.split(/[\s/()[\],;:]+/).flatMap((word) => (word === '' ? [] : (currencyOf(word) ?? []))),
  );
  return found.size === 1 ? ([...found][0] ?? null) : null;
}

export type MoneyReading =
  { ok: true; amount: number; currency: Currency | null } | { ok: false; message: string };

/** An amount of money as written, with its currency before or after it, or without. */
export function moneyOf(written: string, mark: DecimalMark | null): MoneyReading {
  const text = written
    .trim()
    .replace(/\/\s*kg$/i, '')
    .trim();
  const sides = /^([^\d+-]*)([+-]?\d.*?)([^\d]*)$/.exec(text);
  const refused = { ok: false, message: `“${written.trim()}” is not an amount of money.` } as const;
  if (!sides) return refused;
  const named = [sides[1], sides[3]]
    .map((side) => side?.replace(/[.,]?-+$/, '').trim() ?? '')
    .filter((side) => side !== '');
  const currencies = named.map(currencyOf);
  if (named.length > 1) return refused;
  if (currencies.some((one) => one === null))
    return {
      ok: false,
      message: `“${written.trim()}”: “${named[0]}” does not say which currency. Write its three letters, such as USD.`,
    };
  const amount = quantityOf(sides[2]!.replace(/[.,]$/, ''), mark);
  if (!amount.ok) return amount;
  if (amount.value === null || amount.unit !== '') return refused;
  return { ok: true, amount: amount.value, currency: currencies[0] ?? null };
}

/** In which order a table writes days and months: its dates tell where one of them is above 12. */
export type DayOrder = 'day first' | 'month first';

const PARTED = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})$/;

export function dayOrderOf(texts: Iterable<string>): DayOrder | null {
  const seen = { 'day first': false, 'month first': false };
  for (const text of texts) {
    const bare = text.trim();
    const parts = PARTED.exec(bare);
    if (!parts) continue;
    const [first, second] = [Number(parts[1]), Number(parts[3])];
    // What has no month in it, such as “16/18/20”, is no date.
    if (Math.min(first, second) > 12) continue;
    // Points between them are written where days come first.
    if (bare.includes('.') || first > 12) seen['day first'] = true;
    else if (second > 12) seen['month first'] = true;
  }
  if (seen['day first'] === seen['month first']) return null;
  return seen['day first'] ? 'day first' : 'month first';
}

export type DateReading = { ok: true; date: string } | { ok: false; message: string };

/** What programs write for no date is none: the year 1, and the end of 1899 from which spreadsheets count. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

const isDay = (date: string): boolean => {
  const at = new Date(`${date}T00:00:00Z`);
  const year = Number(date.slice(0, 4));
  if (Number.isNaN(at.getTime()) || year < FIRST_YEAR || year > LAST_YEAR) return false;
  return at.toISOString().startsWith(date);
};

/** A year of two digits as POSIX reads one (strptime, %y): 69 to 99 are of the last century, 00 to 68 of this one. */
const fullYear = (year: string): string =>
  year.length === 2 ? `${Number(year) >= 69 ? '19' : '20'}${year}` : year;

const NAMED_DAY =
  /^(?<day>\d{1,2})(?:st|nd|rd|th|er|º|\.)?(?:\s+de)?[\s-]*(?<month>\p{L}{3,})\.?(?:\s+de)?[\s,-]*(?<year>\d{4}|\d{2})$/iu;
const NAMED_MONTH = /^(?<month>\p{L}{3,})\.?\s+(?<day>\d{1,2})(?:st|nd|rd|th)?,?\s+(?<year>\d{4})$/iu;

/** A day as written: year first (ISO 8601, or with points or strokes), the month by its name, or with points, strokes or dashes in the table's order. */
export function dateOf(written: string, order: DayOrder | null): DateReading {
  const text = written.trim();
  const iso = /^(\d{4})([-./])(\d{1,2})\2(\d{1,2})(?:[T ].*)?$/.exec(text);
  const refused = {
    ok: false,
    message: `“${text}” is not a date. Write it as year-month-day: 2026-03-31.`,
  } as const;
  const dayOf = (year: string, month: string, day: string): DateReading => {
    const date = `${fullYear(year)}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    return isDay(date) ? { ok: true, date } : refused;
  };
  if (iso) return dayOf(iso[1]!, iso[3]!, iso[4]!);
  const named = NAMED_DAY.exec(text) ?? NAMED_MONTH.exec(text);
  if (named?.groups) {
    const { day, month, year } = named.groups as Record<'day' | 'month' | 'year', string>;
    const number = monthOf(month);
    return number === null ? refused : dayOf(year, String(number), day);
  }
  const parts = PARTED.exec(text);
  if (!parts) return refused;
  const [, first, , second, year] = parts as unknown as [string, string, string, string, string];
  const told = order ?? dayOrderOf([text]) ?? (first === second ? 'day first' : null);
  if (told === null)
    return {
      ok: false,
      message: `“${text}” may begin with the day or with the month. Write it as year-month-day: 2026-03-31.`,
    };
  return told === 'day first' ? dayOf(year, second, first) : dayOf(year, first, second);
}
