import type { ReadingWays } from '../imports/read-cell';
import { plain } from '../imports/plain';
import { labelOf, type Label } from './find-label';
import { around, type Cell, type Line } from './lines';
import type { Proposal } from './proposal';
import { keepingOf } from './shelf-life';
import { storageSaid, valueSaid, type Said } from './read-value';

/** A sentence of running text, and the cells over which it runs. */
interface Sentence {
  text: string;
  page: number;
  cells: Cell[];
}

/** So many paragraphs beside each other are followed at once. */
const MOST_OPEN = 40;

/** Cells that stand below each other without a gap, as one text: a paragraph, also one of two beside each other. */
function paragraphs(lines: readonly Line[]): { page: number; cells: Cell[] }[] {
  const all: { page: number; cells: Cell[] }[] = [];
  for (const { page, cells } of lines)
    for (const cell of cells) {
      // Only what stands close above can go on.
      const open = all.slice(-MOST_OPEN).find((one) => {
        const last = one.cells[one.cells.length - 1]!;
        const near = cell.y - last.y > 0 && cell.y - last.y < last.height * 1.8;
        return (
          one.page === page &&
          near &&
          Math.abs(last.x - cell.x) < 3 &&
          Math.abs(last.height - cell.height) < 1
        );
      });
      if (open) open.cells.push(cell);
      else all.push({ page, cells: [cell] });
    }
  return all;
}

/** Where a sentence ends: a mark, then a space and a capital; no number and no shortening stands before it. */
const END = /(?<=[\p{L}\d)%°]{2}[.!?]|[)%C\d][.!?])\s+(?=[\p{Lu}¿])/u;
const SHORT = /\b(?:ca|approx|max|min|no|nr|env|aprox|z\. ?b|e\. ?g|i\. ?e|d\. ?h|p\. ?ej|art|abs)\.$/i;

function sentencesOf({ page, cells }: { page: number; cells: Cell[] }): Sentence[] {
  const starts: number[] = [];
  let text = '';
  for (const cell of cells) {
    const hyphened = /\p{Ll}-$/u.test(text) && /^\p{Ll}/u.test(cell.text);
    if (text !== '' && !hyphened) text += ' ';
    if (hyphened) text = text.slice(0, -1);
    starts.push(text.length);
    text += cell.text;
  }
  const pieces: { text: string; from: number }[] = [];
  let from = 0;
  for (const piece of text.split(END)) {
    const at = text.indexOf(piece, from);
    const last = pieces[pieces.length - 1];
    if (last && SHORT.test(last.text)) last.text = text.slice(last.from, at + piece.length);
    else pieces.push({ text: piece, from: at });
    from = at + piece.length;
  }
  return pieces.map((piece) => {
    const to = piece.from + piece.text.length;
    const over = cells.filter((_, at) => (starts[at] ?? 0) < to && (starts[at + 1] ?? Infinity) > piece.from);
    return { text: piece.text, page, cells: over };
  });
}

const ARTICLE =
  /^(?:the|its|this|der|die|das|ihr|ihre|sein|seine|le|la|les|l['’]|el|los|las|son|sa|su|sus)\s*/i;
const OF_IT =
  /\s+(?:of|von|des|du|de la|de l['’]|del|de|der)\s*(?:the\s+|this\s+)?(?:product|material|emulsifier|ester|wax|oil|ingredient|it|Produkts|Produktes|Rohstoffs|Materials|Emulgators|produit|matière|émulsifiant|producto|materia|emulsionante)$/i;
const CONNECTED =
  /^(.{2,80}?)\s+(?:is|are|amounts to|equals|lies|ist|beträgt|liegt|est|se situe|s['’]élève|es|se sitúa|está)\s+(.+)$/i;
const ABOUT =
  /^(?:(?:usually|normally|typically|generally|in der Regel|normalerweise|généralement|normalmente)\s+)?(?:(?:at|of|in the range of|in the region of|bei|im Bereich von|dans l['’]intervalle|comprise?|en)\s+)?(?:(?:about|approximately|approx\.|around|ca\.|etwa|rund|d['’]environ|environ|de|alrededor de|aproximadamente)\s+)?/i;
/** What makes a value that of something else than the material. */
const OTHERS =
  /combin|together|partner|co-?emuls|blend|mixed|mixture|oil phase|ölphase|required|erforderlich|requis|requerid|zusammen|kombin|mélang|mezcl|other|andere|autre|otro|compared|formula|formulation|rezeptur|formule|fórmula|emulsions? (?:of|with)|final|finished|endprodukt|fini\b|terminado|batch|should be adjusted|adjust|einstellen|ajust/i;

/** “The HLB value is 12”: the label before the verb, its value after it. */
function connected(text: string, names: readonly string[], ways: ReadingWays): Said[] {
  const found = CONNECTED.exec(text.replace(/[.!]+$/, ''));
  if (!found?.[1] || !found[2]) return [];
  let subject = found[1].replace(ARTICLE, '').replace(OF_IT, '');
  for (const name of names) {
    const at = subject.toLowerCase().search(new RegExp(`\\s+(?:of|von|de|del|du)\\s+${escaped(name)}$`, 'i'));
    if (at > 0) subject = subject.slice(0, at);
  }
  const label = labelOf(subject);
  if (!label?.key || TEXTS.has(label.key)) return [];
  const isUsage = label.key === 'usage.range';
  if (OTHERS.test(found[2]) && !isUsage) return [];
  return spoken(label, found[2].replace(ABOUT, ''), ways);
}

/** Never read from a sentence that happens to begin with their name. */
const TEXTS: ReadonlySet<string> = new Set([
  'tradeName',
  'composition',
  'form',
  'appearance',
  'hazards',
  'casNumbers',
  'storage',
]);

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function spoken({ key, unit, condition }: Label, value: string, ways: ReadingWays): Said[] {
  return valueSaid(key!, value, { unit, condition, typical: '' }, ways);
}

const SUBJECT = [
  'the product',
  'this product',
  'it',
  'the material',
  'das produkt',
  'dieses produkt',
  'es',
  'der rohstoff',
  'le produit',
  'ce produit',
  'il',
  'el producto',
  'este producto',
];
const WITH_HLB =
  /\b(?:with|has|having|mit|hat|besitzt|avec|possède|a|con|tiene)\s+(?:an?|einem|einen|un|une)\s+HLB(?:[- ](?:value|number|wert))?\s+(?:of|von|de)\s+(?:about|approximately|approx\.|around|ca\.|etwa|environ|d['’]environ|aproximadamente)?\s*(\d+(?:[.,]\d+)?)(?![\d%]|\s*[-–])/i;
const MELTS =
  /\b(?:melts|schmilzt|fond|funde)\s+(?:at|between|from|bei|zwischen|à|entre|a)\s+(?:about|approximately|approx\.|ca\.|etwa|environ|aproximadamente)?\s*(\d[^.;,]*?°\s*[CF])\b/i;

/** What a sentence says of its subject, which is the material itself. */
function ofSubject(text: string, names: readonly string[], ways: ReadingWays): Said[] {
  const begun = plain(text);
  const own = [...SUBJECT, ...names.filter((name) => name.length > 3)].some((one) =>
    begun.startsWith(`${one} `),
  );
  if (!own || OTHERS.test(text)) return [];
  const hlb = WITH_HLB.exec(text)?.[1];
  const melts = MELTS.exec(text)?.[1]?.replace(/\s+(?:and|und|et|y|to|bis|à|a)\s+/i, ' – ');
  const none = { unit: '', condition: '', typical: '' };
  return [
    ...(hlb ? valueSaid('figures.hlb', hlb, none, ways) : []),
    ...(melts ? valueSaid('figures.meltingPoint', melts, none, ways) : []),
  ];
}

const STORE =
  /^(?:please\s+)?(?:(?:(?:the )?(?:product|material)|it) (?:should|must|is to) be (?:stored|kept)|to be stored|should be stored|store(?:d)?\b|keep (?:in|at|below|between|under|cool|dry|tightly|away|from|protected|container|containers|closed|unopened|frozen|the (?:container|product))|recommended storage|(?:das produkt |trocken|kühl|bei|im|in|vor|unter).*(?:lagern|aufbewahren|gelagert|aufzubewahren)|lagern|(?:le produit (?:doit|se) .*|à )?(?:conserver|stocker|conservé|conserve)\b|almacenar|almacénese|conservar|consérvese|guardar|mantener (?:en|el envase|el producto|alejado|protegido))/i;
const KEEPS =
  /(?:can|may|could) be (?:stored|kept) (?:for )?|keeps for|(?:lagerfähig|haltbar|haltbarkeit)|se conserve|se conserva|(?:shelf life|retest period|stable) (?:of|for|is)|durée de (?:conservation|vie)|vida útil/i;

function ofKeeping(text: string): Said[] {
  const stored = STORE.test(text) && !OTHERS.test(text) ? storageSaid(text) : [];
  if (!KEEPS.test(text) || /formula|emulsion|rezeptur|formule|fórmula/i.test(text)) return stored;
  const { unopened, opened } = keepingOf(text);
  const months = (key: string, value: number | null): Said[] =>
    value === null ? [] : [{ key, value, sure: 'likely', note: '' }];
  return [
    ...stored,
    ...months('storage.shelfLifeMonths', unopened),
    ...months('storage.afterOpeningMonths', opened),
  ];
}

/**
 * What running text says of the material, in sentences that begin with it or with one of its properties. Never surer than
 * likely.
 * @param names what the material is called, plain
 */
export function saidInSentences(
  lines: readonly Line[],
  names: readonly string[],
  ways: ReadingWays,
): Proposal[] {
  return paragraphs(lines)
    .flatMap(sentencesOf)
    .filter(({ text }) => text.length >= 12 && text.length < 600)
    .flatMap(({ text, page, cells }) =>
      [...connected(text, names, ways), ...ofSubject(text, names, ways), ...ofKeeping(text)].map((one) => ({
        ...one,
        sure: one.sure === 'sure' ? ('likely' as const) : one.sure,
        page,
        rect: around(cells),
        line: text,
      })),
    );
}
