import { fold } from '../quantities/fold';

/** Plain ASCII, which most cells are: the quicker pattern says the same of it. */
const ASCII = /^[\n -~]*$/;

/** Text for comparing what makers write: without case, accents, signs and double spaces. */
export function plain(text: string): string {
  if (ASCII.test(text))
    return text
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, ' ')
      .trim();
  return fold(text)
    .replace(/[^\p{L}\p{N}✓✔]+/gu, ' ')
    .trim();
}

/** What says that nothing is known. */
const NOTHING = new Set([
  'n a',
  'na',
  'k a',
  'n v',
  'nv',
  'unknown',
  'unbekannt',
  'inconnu',
  'desconocido',
  'tbd',
  'tba',
  'nd',
  'n d',
]);

/** Longer texts say something; a table asks this of every cell. */
const LONGEST_NOTHING = 24;

/** Whether a text only says that nothing is known: a dash, “n/a”, “k. A.”. */
export function saysNothing(text: string): boolean {
  const bare = text.trim();
  if (bare.length > LONGEST_NOTHING) return false;
  if (/^\d/.test(bare)) return false;
  return bare === '' || /^[-–—?.*]+$/.test(bare) || NOTHING.has(plain(bare));
}
