import { plain, saysNothing } from './plain';
import type { Target } from './target';
import { NO_WORDS, VOCABULARY_WORDS, YES_WORDS } from './vocabulary-words';

/** A maker's words, as they were told what they mean: by target, then by the word as {@link plain} gives it. */
export type WordMap = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** Shortenings count from this many letters on, where they lead to one word only. */
const LEAST_SHORTENED = 4;

function spellingsOf({ key, reading }: Target): [spelling: string, word: string][] {
  if (reading.kind !== 'word' && reading.kind !== 'words') return [];
  const names = reading.kind === 'word' ? (reading.names ?? {}) : {};
  return reading.words.flatMap((word) =>
    [word, names[word] ?? word, ...(VOCABULARY_WORDS[key]?.[word]?.split(',') ?? [])].map(
      (one): [string, string] => [plain(one), word],
    ),
  );
}

const KNOWN = new Map<string, Map<string, string>>();

/** The spellings of a target's words; one that stands for two words is left out, unless it is a word of ours itself. */
function known(target: Target): Map<string, string> {
  const before = KNOWN.get(target.key);
  if (before) return before;
  const spellings = new Map<string, string>();
  const doubtful = new Set<string>();
  for (const [spelling, word] of spellingsOf(target)) {
    const other = spellings.get(spelling);
    if (other === undefined) spellings.set(spelling, word);
    else if (other !== word && spelling !== plain(other)) doubtful.add(spelling);
  }
  for (const spelling of doubtful) spellings.delete(spelling);
  KNOWN.set(target.key, spellings);
  return spellings;
}

/** What was found for the words of a table: the same few stand in thousands of its cells. */
const FOUND = new WeakMap<WordMap, Map<string, string | null>>();
const MOST_FOUND = 5_000;

/** The word of ours that a maker's word means; null where that cannot be told. */
export function wordFor(target: Target, written: string, told: WordMap): string | null {
  const found = FOUND.get(told) ?? new Map<string, string | null>();
  FOUND.set(told, found);
  const name = `${target.key} ${written}`;
  const before = found.get(name);
  if (before !== undefined) return before;
  const word = lookedUp(target, written, told);
  if (found.size < MOST_FOUND) found.set(name, word);
  return word;
}

function lookedUp(target: Target, written: string, told: WordMap): string | null {
  const spelling = plain(written);
  const own = told[target.key]?.[spelling];
  if (own !== undefined) return own;
  const spellings = known(target);
  const exact = spellings.get(spelling);
  if (exact !== undefined) return exact;
  if (spelling.length < LEAST_SHORTENED) return null;
  const begun = new Set([...spellings].filter(([one]) => one.startsWith(spelling)).map(([, word]) => word));
  return begun.size === 1 ? ([...begun][0] ?? null) : null;
}

/** The pieces of a cell that say something. */
const saying = (pieces: string[]): string[] =>
  pieces.map((one) => one.trim()).filter((one) => !saysNothing(one));

/** The words of a cell that holds several. What says that nothing is known may hold a stroke itself: “n/a”, “k/A”. */
export function wordsIn(written: string): string[] {
  const pieces = saying(written.split(/[,;|+&\n]|\s+(?:und|and|et|y|e)\s+/));
  return saying(pieces.flatMap((one) => one.split('/')));
}

/** Words that stand apart by semicolons only: some of them hold commas and “and” themselves. */
export function listIn(written: string): string[] {
  return saying(written.split(/[;|\n]/));
}

const YES = new Set(YES_WORDS.map((word) => plain(word) || word));
const NO = new Set(NO_WORDS.map((word) => plain(word) || word));

/** Whether a cell says yes or no; null where it says neither. */
export function yesOrNoOf(written: string): boolean | null {
  const word = plain(written) || written.trim();
  if (YES.has(word)) return true;
  return NO.has(word) ? false : null;
}
