import { formatNumber, type Region } from './numbers';

/** "a, b and c". */
export function joined(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}

/** The text with its first letter as a capital; "o/w" and "w/o" stay as the trade writes them. */
export function capital(text: string): string {
  return /^[ow]\/[ow]/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
}

/** Yes or no, and nothing when it is not known. */
export function yesNo(known: boolean | null): string {
  return known === null ? '' : known ? 'Yes' : 'No';
}

const COUNTED = /^(month|week|day|part|pack)s$/;
/** The unit of one of it, where units are words: "1 month", "2 months", "1 g". */
export function unitWords(value: number | string, unit = ''): string {
  return Number(value) === 1 ? unit.replace(COUNTED, '$1') : unit;
}

/** How many there are of something, in words: "1 batch", "5,000 batches", "3 trial series". @param one what one is called */
export function count(number: number, one: string, region: Region = 'en-GB'): string {
  if (number === 1) return `1 ${one}`;
  const many = one.endsWith('series') ? one : /(ch|s|x)$/.test(one) ? `${one}es` : `${one}s`;
  return `${formatNumber(number, region, 0)} ${many}`;
}
