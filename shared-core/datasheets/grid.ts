import { plain } from '../imports/plain';
import { labelOf } from './find-label';
import { overlap, type Cell, type Line } from './lines';

/** What a column of a table of properties holds. */
export type Role = 'property' | 'unit' | 'min' | 'max' | 'value' | 'typical' | 'method' | 'other';

const ROLES: readonly [Role, RegExp][] = [
  [
    'property',
    /^(property|properties|parameters?|characteristics?|tests?|test item|item|quality|eigenschaft(en)?|kennzahl(en)?|merkmal(e)?|prufparameter|proprietes?|parametres?|caracteristiques?|essais?|propiedad(es)?|parametros?|caracteristicas?|ensayos?|criteria|kriterium|analysis|analyse)$/,
  ],
  ['unit', /^(units?|einheit(en)?|unites?|unidad(es)?)$/],
  ['min', /^(min|minimum|lower limit|low|von|untergrenze|minimo|de|desde|from|lower)$/],
  ['max', /^(max|maximum|upper limit|high|bis|obergrenze|maximo|a|hasta|to|upper)$/],
  [
    'typical',
    /^(typical( values?| data| figures?)?|typische[rs]?( werte?| daten)?|richtwerte?|valeurs? typiques?|valeurs? indicatives?|valor(es)? tipicos?|valor(es)? orientativos?|average)$/,
  ],
  [
    'value',
    /^(values?|specifications?|spec|limits?|requirements?|sales specifications?|target|wert|werte|spezifikation|sollwert|grenzwerte?|anforderung(en)?|valeurs?|limites?|exigences?|valor(es)?|especificacion(es)?|requisitos|data|daten|donnees|datos)$/,
  ],
  [
    'method',
    /^(methods?|test methods?|analytical methods?|methode|prufmethode|prufvorschrift|norm|methodes?|methode d essai|metodos?|metodo de ensayo|standard|reference|referenz|procedure)$/,
  ],
];

export interface Head {
  role: Role;
  cell: Cell;
  text: string;
}

/** The columns that a line heads; null where it heads none. */
export function headsOf({ cells }: Line): Head[] | null {
  if (cells.length < 2 || cells.length > 8) return null;
  const heads = cells.map((cell): Head => {
    const text = plain(cell.text.replace(/[([].*$/, ''));
    return {
      role: ROLES.find(([, words]) => words.test(text))?.[0] ?? 'other',
      cell,
      text: plain(cell.text),
    };
  });
  const known = heads.filter(({ role }) => role !== 'other').length;
  const valued = heads.some(({ role }) => ['value', 'typical', 'min', 'max'].includes(role));
  const labels = cells.filter(({ text }) => labelOf(text)?.key !== undefined).length;
  const first = heads[0]?.role === 'property';
  const isHead =
    (known >= 2 && (valued || first)) ||
    (first && cells.every(({ text }) => /\p{L}{2}/u.test(text) || /\p{L} ?\d/u.test(text)));
  return isHead && labels <= known ? heads : null;
}

const apart = (a: Cell, b: Cell): number => {
  const shared = overlap(a, b);
  return shared > 0 ? 0 : -shared;
};
const offCentre = (a: Cell, b: Cell): number => Math.abs(a.x + a.width / 2 - b.x - b.width / 2);

/** The column under whose head a cell stands. */
export function headOf(heads: readonly Head[], cell: Cell): Head | undefined {
  return [...heads].sort(
    (a, b) => apart(a.cell, cell) - apart(b.cell, cell) || offCentre(a.cell, cell) - offCentre(b.cell, cell),
  )[0];
}
