import { isUnitOf, labelOf } from '../../datasheets/find-label';
import { valueSaid, type Ends } from '../../datasheets/read-value';
import { decimalMarkOf } from '../../imports/quantity';
import { pastedTable } from '../../formulas/pasting/pasted-table';
import { FIGURE_KINDS, FIGURE_NAMES, type FigureKind } from '../figure';

export interface PastedFigures {
  figures: Partial<Record<FigureKind, Ends>>;
  /** The rows that could not be told, as they stand. */
  left: string[];
}

/** The labels of our own fields, beside what data sheets call them. */
const OWN = new Map(FIGURE_NAMES.map((kind) => [FIGURE_KINDS[kind].label.toLowerCase(), `figures.${kind}`]));

/** The figures of a block pasted from a spreadsheet: what, its value or its lowest and highest, and its unit, in a row. */
export function pastedFigures(text: string): PastedFigures {
  const figures: PastedFigures['figures'] = {};
  const left: string[] = [];
  const table = pastedTable(text);
  const mark = decimalMarkOf(table.flat());
  for (const cells of table) {
    const [name = '', ...rest] = cells.filter((cell) => cell !== '');
    const own = OWN.get(name.toLowerCase());
    const label = own ? { key: own, unit: '', condition: '' } : labelOf(name);
    const key = label?.key?.startsWith('figures.') ? label.key : null;
    const unit = rest.find((cell) => isUnitOf(key, cell)) ?? label?.unit ?? '';
    const values = rest.filter((cell) => cell !== unit && /\d/.test(cell));
    const value = values.length === 2 ? values.join(' – ') : values.length === 1 ? values[0]! : '';
    const parts = { unit, condition: label?.condition ?? '', typical: '' };
    const [said] = key && value !== '' ? valueSaid(key, value, parts, { mark, order: null, words: {} }) : [];
    if (said && said.sure !== 'unsure')
      figures[said.key.slice('figures.'.length) as FigureKind] = said.value as Ends;
    else if (/\d/.test(cells.slice(1).join(''))) left.push(cells.join(' '));
  }
  return { figures, left };
}
