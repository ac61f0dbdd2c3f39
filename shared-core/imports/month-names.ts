import { plain } from './plain';

/** January to December: English, German, French, Spanish, Italian (CLDR), and how spreadsheets shorten them. */
const NAMES = [
  'january januar jänner janvier enero gennaio',
  'february februar feber février febrero febbraio',
  'march märz mrz mars marzo',
  'april avril abril aprile',
  'may mai mayo maggio',
  'june juni juin junio giugno',
  'july juli juillet julio luglio',
  'august août agosto',
  'september sept septembre septiembre setiembre settembre',
  'october oktober octobre octubre ottobre',
  'november novembre noviembre',
  'december dezember décembre diciembre dicembre',
].map((names) => names.split(' ').map(plain));

const LEAST_LETTERS = 3;

/** The month that a name, or its beginning, stands for, from 1; null for none, and for one that may be two (“jui”). */
export function monthOf(name: string): number | null {
  const word = plain(name);
  if (word.length < LEAST_LETTERS) return null;
  const found = NAMES.flatMap((names, at) => (names.some((one) => one.startsWith(word)) ? [at + 1] : []));
  return found.length === 1 ? (found[0] ?? null) : null;
}
