import { plain } from '../imports/plain';
import { VOCABULARY_WORDS } from '../imports/vocabulary-words';

export interface TemperatureEnds {
  low: number | null;
  value: null;
  high: number | null;
}

const DEGREES = '([+-]?\\d+(?:[.,]\\d+)?)\\s*°\\s*C';
const BETWEEN = new RegExp(
  `([+-]?\\d+)\\s*(?:°\\s*C?)?\\s*(?:–|—|-|to|and|bis|und|à|et|a|y|hasta)\\s*\\+?${DEGREES}`,
  'gi',
);
const AT_MOST = new RegExp(
  `(?<!not |nicht |no |pas )(?:below|under|beneath|max(?:imum|imal|\\.)?|not exceed(?:ing)?|not above|no more than|up to|<|≤|unter|unterhalb(?: von)?|nicht über|höchstens|bis(?: zu)?|inférieure? à|en dessous de|au-dessous de|ne dépassant pas|n['’]excédant pas|jusqu['’]à|inferior(?:es)? a|por debajo de|no superior a|menos de|hasta)\\s*${DEGREES}`,
  'gi',
);
const AT_LEAST = new RegExp(
  `(?<!not |nicht |no |pas )(?:above|over|at least|min(?:imum|\\.)?|>|≥|über|oberhalb(?: von)?|nicht unter|not below|mindestens|supérieure? à|au-dessus de|superior(?:es)? a|por encima de|mínimo)\\s*${DEGREES}`,
  'gi',
);
/** “Do not store below 5 °C” asks for 5 °C at least, “avoid temperatures above 30 °C” for 30 °C at most. */
const DENIAL =
  "\\b(?:not|never|avoid|nicht|keinesfalls|pas|jamais|éviter|no|nunca|evitar)(?:\\s+[\\p{L}’']+){1,4}";
const LOWER =
  '(?:below|under|beneath|unter|unterhalb(?: von)?|en dessous de|au-dessous de|inférieures? à|por debajo de|inferiores? a)';
const UPPER =
  '(?:above|over|exceeding|über|oberhalb(?: von)?|au-dessus de|supérieures? à|por encima de|superiores? a)';
const AVOIDED = '\\s*(?:zu\\s+)?(?:vermeiden|meiden)\\b';
const NOT_BELOW = new RegExp(
  `${DENIAL}\\s+${LOWER}\\s*${DEGREES}|\\b${LOWER}\\s*${DEGREES}${AVOIDED}`,
  'giu',
);
const NOT_ABOVE = new RegExp(
  `${DENIAL}\\s+${UPPER}\\s*${DEGREES}|(?<!\\p{L})${UPPER}\\s*${DEGREES}${AVOIDED}`,
  'giu',
);
const ANY = new RegExp(DEGREES, 'gi');

const number = (text: string): number => Number(text.replace(',', '.'));

/** Between which temperatures a text says to keep something; null where it names none, or more than one span. */
export function storageTemperatures(text: string): TemperatureEnds | null {
  const spans: [number, number][] = [];
  const rest = text.replace(BETWEEN, (_all, low: string, high: string) => {
    spans.push([number(low), number(high)]);
    return ' ';
  });
  const most: number[] = [];
  const least: number[] = [];
  const left = rest
    .replace(NOT_BELOW, (_all, one?: string, other?: string) => (least.push(number(one ?? other ?? '')), ' '))
    .replace(NOT_ABOVE, (_all, one?: string, other?: string) => (most.push(number(one ?? other ?? '')), ' '))
    .replace(AT_LEAST, (_all, low: string) => (least.push(number(low)), ' '))
    .replace(AT_MOST, (_all, high: string) => (most.push(number(high)), ' '));
  if (ANY.test(left)) {
    ANY.lastIndex = 0;
    return null;
  }
  if (spans.length + Math.max(most.length, least.length) !== 1) return null;
  const [low, high] = spans[0] ?? [least[0] ?? null, most[0] ?? null];
  if ((low ?? -80) < -80 || (high ?? 60) > 60 || (low !== null && high !== null && low > high)) return null;
  return { low: low ?? null, value: null, high: high ?? null };
}

const KEEP_FROM = new Map(
  Object.entries(VOCABULARY_WORDS['storage.keepFrom'] ?? {}).flatMap(([word, spellings]) =>
    spellings.split(',').map((one): [string, string] => [plain(one), word]),
  ),
);
const MORE: Readonly<Record<string, string>> = {
  lichteinwirkung: 'light',
  sonneneinstrahlung: 'light',
  feuchtigkeit: 'moisture',
  humid: 'moisture',
  frosteinwirkung: 'frost',
  soleil: 'light',
  sol: 'light',
  heladas: 'frost',
  helada: 'frost',
};
const GUARDED =
  /(?:protect(?:ed|ion)?(?: it)? (?:from|against)|away from|keep from|avoid(?: exposure to)?|(?<!not |insensitive |less )sensitive to|à l['’]abri (?:de la |de l['’]|du |des |de )|protéger (?:de la |de l['’]|du |des |de |contre )|protegido? (?:de la |del |de |contra )|proteger (?:de la |del |de |contra )|al abrigo (?:de la |del |de )|lejos de )([^.;]*)/gi;
const GUARDED_BEFORE = /\bvor\s+([^.;]*?)\s+(?:zu\s+)?(?:schützen|geschützt|bewahren)/gi;

/** What a text says to keep something from, in our words. */
export function keptFrom(text: string): string[] {
  const said = [...text.matchAll(GUARDED), ...text.matchAll(GUARDED_BEFORE)].map(([, what]) =>
    plain(what ?? ''),
  );
  const words = said
    .flatMap((one) => one.split(' '))
    .flatMap((word) => KEEP_FROM.get(word) ?? MORE[word] ?? []);
  return [...new Set(words)];
}
