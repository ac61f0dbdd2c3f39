import { labelOf, labelled } from './find-label';
import { around, lineText, type Line } from './lines';
import type { Proposal } from './proposal';
import { bodyHeight } from './sections';

/** What kind of paper it is: it stands beside the name, in the four languages. */
const PAPER =
  /(?:preliminary\s+)?(?:technical|product|safety|material safety|raw material)\s+(?:data\s*sheet|information(?:\s+sheet)?|bulletin|leaflet|specification|profile)|\bspecification(?:\s+sheet)?\b|\bdata\s*sheet\b|\bTDS\b|\bSDS\b|\bMSDS\b|\bTechnisches?\s+(?:Datenblatt|Merkblatt|Information)|\bSicherheitsdatenblatt\b|\bProdukt(?:datenblatt|information|spezifikation|blatt)\b|\bRohstoff(?:datenblatt|spezifikation)\b|\bDatenblatt\b|\bSpezifikation\b|\bfiche\s+(?:technique|produit|de données de sécurité)|\bnotice technique\b|\bspécifications?\b|\bficha\s+(?:técnica|de producto|de datos de seguridad)|\bhoja\s+(?:técnica|de datos(?: de seguridad)?)|\bespecificaci(?:ón|ones)\b/gi;
/** How far down the first page a title may stand. */
const TOP = 0.4;
const LARGER = 1.25;

/** The title of the first page as the material's name: what is set largest near its top, without the kind of paper. */
export function titleOf(lines: readonly Line[], pageHeight: number): Proposal | null {
  const body = bodyHeight(lines);
  const top = lines.filter(({ page, y }) => page === 1 && y < pageHeight * TOP);
  const sizes = top.map((line) => Math.max(...line.cells.map(({ height }) => height)));
  const order = top
    .map((line, at) => ({ line, height: sizes[at]! }))
    .filter(({ height }) => height >= body * LARGER)
    .sort((a, b) => b.height - a.height || a.line.y - b.line.y);
  for (const { line } of order) {
    const text = lineText(line)
      .replace(PAPER, ' ')
      .replace(/[®™©]/g, '')
      .replace(/^[\s:–—|/-]+|[\s:–—|/-]+$/g, '')
      .replace(/\s+/g, ' ');
    if (!/\p{L}{3}/u.test(text) || text.length > 60 || labelOf(text) || labelled(text)) continue;
    if (/[.!?]$|@|www\.|https?:/i.test(text)) continue;
    const rect = around(line.cells);
    const note = 'It is the title of the sheet; nothing there calls it the trade name.';
    return { key: 'tradeName', value: text, page: 1, rect, line: lineText(line), sure: 'likely', note };
  }
  return null;
}
