import { plain, saysNothing } from '../imports/plain';
import { isCondition, isMethod, isNeutral, isUnitOf, labelled, labelOf, type Label } from './find-label';
import { headOf, headsOf, type Head, type Role } from './grid';
import { around, overlap, type Cell, type Line, type Rect } from './lines';

/** How a value was found beside its label: the surest first. */
export type Layout = 'beside' | 'below';

/** A label with what stands beside it. */
export interface Pair {
  label: Label;
  /** In one text, its bounds put together. */
  value: string;
  /** A single figure given beside a range. */
  typical: string;
  page: number;
  rect: Rect;
  /** The line as it stands, for whoever looks. */
  line: string;
  layout: Layout;
}

const MIN_OR_MAX = /^(min|max)(imum)?\.?$/i;
const MOST_CONTINUED = 4;

/** A label that begins at a cell, over two lines where it does not fit one; and the cells below that it takes. */
function labelAt(cell: Cell, below: Line | undefined): Label | null {
  const own = labelOf(cell.text);
  if (own) return own;
  const [next, ...others] = below?.cells ?? [];
  if (!next || others.length > 0 || Math.abs(next.x - cell.x) > 3) return null;
  return next.y - cell.y < cell.height * 2 ? labelOf(`${cell.text} ${next.text}`) : null;
}

/** The text of a cell with the lines that follow in its column while the label's column stays empty. */
function continued(
  cell: Cell,
  label: Cell,
  lines: readonly Line[],
  at: number,
): { text: string; cells: Cell[] } {
  const cells = [cell];
  for (const line of lines.slice(at + 1, at + 1 + MOST_CONTINUED)) {
    const last = cells[cells.length - 1]!;
    const own = line.cells.filter((one) => Math.abs(one.x - cell.x) < 3);
    const beside = line.cells.some((one) => overlap(one, label) > 0 || one.x < label.x - 3);
    const [next] = own;
    if (!next || beside || next.y - last.y > last.height * 1.9 || next.y <= last.y) break;
    cells.push(next);
  }
  const text = cells
    .map((one) => one.text)
    .join(' ')
    .replace(/(\p{L})- (?=\p{Ll})/gu, '$1-');
  return { text, cells };
}

/** The value among the cells of a row without a head: one only, beside units and methods. */
function bareValue(label: Label, cells: readonly Cell[]): { value: string; unit: string; cell: Cell } | null {
  let unit = '';
  const values: Cell[] = [];
  let bound = '';
  for (const cell of cells) {
    const { text } = cell;
    if (isUnitOf(label.key, text.replace(/^[([]|[)\]]$/g, ''))) unit ||= text.replace(/^[([]|[)\]]$/g, '');
    else if (MIN_OR_MAX.test(text)) bound = text;
    else if (saysNothing(text) || (isMethod(text) && values.length > 0) || isNeutral(text)) continue;
    else if (isCondition(text) && label.condition === '' && values.length === 0 && cells.length > 1) {
      // “20 °C” is a value of a melting point, and a condition of all else.
      if (label.key === 'figures.meltingPoint' || label.key === 'storage') values.push(cell);
      else label.condition = text;
    } else values.push(cell);
  }
  const [only, ...others] = values;
  if (!only || others.length > 0) return null;
  return { value: bound === '' ? only.text : `${bound} ${only.text}`, unit, cell: only };
}

interface Columns {
  text: Record<Exclude<Role, 'property' | 'other'>, string>;
  cells: Cell[];
}

/** Which columns of unknown heads hold the material: the only one, or the one that is called as it is. */
function ownColumns(heads: readonly Head[], names: readonly string[]): Head[] {
  const others = heads.filter(({ role }, at) => role === 'other' && at > 0);
  if (others.length <= 1) return others;
  return others.filter(({ text }) => names.some((name) => name !== '' && text.includes(name)));
}

function columnsOf(cells: readonly Cell[], heads: readonly Head[], names: readonly string[]): Columns | null {
  const own = ownColumns(heads, names);
  const several = heads.filter(({ role }, at) => role === 'other' && at > 0).length > 1;
  const found: Columns = {
    text: { unit: '', min: '', max: '', value: '', typical: '', method: '' },
    cells: [],
  };
  for (const cell of cells) {
    const head = headOf(heads, cell);
    if (!head || head.role === 'property') return null;
    const role = head.role === 'other' ? (own.includes(head) ? 'value' : null) : head.role;
    if (role === null || saysNothing(cell.text)) continue;
    if (several && head.role === 'value') continue;
    if (found.text[role] !== '' && role !== 'method') return null;
    found.text[role] = cell.text;
    if (role !== 'method' && role !== 'unit') found.cells.push(cell);
  }
  return found.cells.length > 0 ? found : null;
}

function boundsOf({ min, max, value }: Columns['text']): string {
  if (min !== '' && max !== '') return `${min} – ${max}`;
  if (min !== '') return /^\W|[a-z]/i.test(min) ? min : `≥ ${min}`;
  if (max !== '') return /^\W|[a-z]/i.test(max) ? max : `≤ ${max}`;
  return value;
}

const lineOf = ({ cells }: Line): string => cells.map(({ text }) => text).join('  ');

/** Where a label begins in a line; its value where both stand in one cell. */
interface Start {
  index: number;
  label: Label;
  value: string | null;
}

class PairReader {
  readonly pairs: Pair[] = [];
  private heads: Head[] | null = null;
  private headed: Line | null = null;

  constructor(
    private readonly lines: readonly Line[],
    private readonly names: readonly string[],
  ) {}

  read(): Pair[] {
    this.lines.forEach((line, at) => this.readLine(line, at));
    return this.pairs;
  }

  private readLine(line: Line, at: number): void {
    const heads = headsOf(line);
    if (heads) {
      this.heads = heads;
      this.headed = line;
      return;
    }
    const before = this.lines[at - 1];
    const broken = before?.page === line.page && line.y - before.y > before.height * 6;
    if (broken || (line.cells.length === 1 && !this.underHead(line))) this.heads = null;
    const below = this.lines[at + 1];
    const starts = line.cells.flatMap((cell, index): Start[] => {
      const whole = labelAt(cell, below);
      if (whole) return [{ index, label: whole, value: null }];
      const both = labelled(cell.text);
      return both ? [{ index, label: both.label, value: both.value }] : [];
    });
    starts.forEach(({ index, label, value }, order) => {
      const until = starts[order + 1]?.index ?? line.cells.length;
      const cell = line.cells[index]!;
      const rest = line.cells.slice(index + 1, until);
      if (label.key === null) return;
      if (value !== null) this.inOnePiece(label, value, cell, rest, line, at);
      else if (rest.length > 0) this.beside(label, cell, rest, line, at);
      else if (starts.length === line.cells.length) this.under(label, cell, line, at);
    });
  }

  /** A row whose only cell stands under the first head goes on in the table: a label over two lines. */
  private underHead(line: Line): boolean {
    const [first] = this.heads ?? [];
    return first !== undefined && this.headed?.page === line.page && Math.abs(first.cell.x - line.x) < 4;
  }

  private add(
    label: Label,
    value: string,
    cells: readonly Cell[],
    line: Line,
    more: Partial<Pair> = {},
  ): void {
    const written = value.trim();
    if (written === '' || saysNothing(written)) return;
    const rect = around(cells);
    this.pairs.push({
      ...{ label, value: written, typical: '', page: line.page, rect, line: lineOf(line), layout: 'beside' },
      ...more,
    });
  }

  private inOnePiece(
    label: Label,
    value: string,
    cell: Cell,
    rest: readonly Cell[],
    line: Line,
    at: number,
  ): void {
    const unit = rest.map(({ text }) => text).find((text) => isUnitOf(label.key, text));
    const others = rest.filter(({ text }) => text !== unit && !isMethod(text));
    if (others.length > 0 && label.key?.startsWith('figures.')) return;
    const more = value.length > 20 ? this.wrapped(cell, at) : { text: '', cells: [] };
    this.add(
      { ...label, unit: label.unit || (unit ?? '') },
      `${value}${more.text === '' ? '' : ` ${more.text}`}`,
      [cell, ...more.cells],
      line,
    );
  }

  /** What follows a long “label: value” on the next lines, set in from its label or begun small. */
  private wrapped(cell: Cell, at: number): { text: string; cells: Cell[] } {
    const cells: Cell[] = [];
    let last = cell;
    for (const line of this.lines.slice(at + 1, at + 1 + MOST_CONTINUED)) {
      const [next, ...others] = line.cells.filter((one) => overlap(one, cell) > 0);
      if (!next || others.length > 0 || next.y - last.y > last.height * 1.7 || next.y <= last.y) break;
      if (labelAt(next, undefined) || labelled(next.text) || headsOf(line)) break;
      const goesOn = next.x > cell.x + 3 || /^[\p{Ll}(]/u.test(next.text) || /[,;(]$/.test(last.text);
      if (!goesOn) break;
      cells.push(next);
      last = next;
    }
    return { text: cells.map(({ text }) => text).join(' '), cells };
  }

  private beside(label: Label, cell: Cell, rest: readonly Cell[], line: Line, at: number): void {
    const heads = this.heads;
    const inTable = heads !== null && headOf(heads, cell) === heads[0];
    if (inTable) {
      const columns = columnsOf(rest, heads, this.names);
      if (!columns) return;
      const { text, cells } = columns;
      const bounds = boundsOf(text);
      const unit = text.unit !== '' && isUnitOf(label.key, text.unit) ? text.unit : '';
      // A unit of something else: the row was misread, or it says something else.
      if (text.unit !== '' && unit === '' && label.key?.startsWith('figures.') && plain(text.unit) !== '')
        return;
      const named = { ...label, unit: label.unit || unit };
      const value = bounds || text.typical;
      const isText = !label.key?.startsWith('figures.') && cells.length === 1;
      const long = isText ? continued(cells[0]!, cell, this.lines, at) : { text: value, cells };
      this.add(named, long.text, [cell, ...long.cells], line, {
        typical: bounds === '' ? '' : text.typical,
      });
      return;
    }
    const isText = !label.key?.startsWith('figures.');
    const first = rest[0]!;
    if (isText && rest.length === 1) {
      const { text, cells } = continued(first, cell, this.lines, at);
      this.add(label, text.replace(/^[:=]\s*/, ''), [cell, ...cells], line);
      return;
    }
    const bare = bareValue(
      label,
      rest.map((one) => ({ ...one, text: one.text.replace(/^[:=]\s*/, '') })),
    );
    if (!bare) return;
    this.add({ ...label, unit: label.unit || bare.unit }, bare.value, [cell, bare.cell], line);
  }

  /** Labels that stand above their values, alone or side by side. */
  private under(label: Label, cell: Cell, line: Line, at: number): void {
    const below = this.lines[at + 1];
    if (below?.page !== line.page) return;
    const found = below.cells.filter((one) => overlap(one, cell) > 0);
    const [value, ...others] = found;
    if (!value || others.length > 0 || value.y - cell.y > cell.height * 3.2) return;
    if (labelOf(value.text) || labelled(value.text)) return;
    if (line.cells.length > 1 && Math.abs(value.x - cell.x) > 3 && overlap(value, cell) < value.width * 0.5)
      return;
    const { text, cells } =
      line.cells.length === 1
        ? continued(value, { ...cell, width: 0, x: -1 }, this.lines, at + 1)
        : { text: value.text, cells: [value] };
    this.add(label, label.key?.startsWith('figures.') ? value.text : text, [cell, ...cells], line, {
      layout: 'below',
    });
  }
}

/**
 * Every label of the lines with its value: beside it, in a table by the heads of its columns, behind a colon, or below.
 * Where a row holds more than one value and nothing says which is meant, none is taken.
 * @param names what the material is called, plain: it tells its column from those of others
 */
export function pairsOf(lines: readonly Line[], names: readonly string[]): Pair[] {
  return new PairReader(lines, names).read();
}
