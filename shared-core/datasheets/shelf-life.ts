import { readNumber } from '../quantities/read-number';

const DURATION =
  /(\d[\d.,]*\s*(?:–|-|to|bis|à|a|or|oder|ou|o)\s*)?(\d+(?:[.,]\d+)?)\s*(months?|mths?|monate?n?|mois|mes(?:es)?|years?|yrs?|jahren?|jahre|ans?|años?)(?![\p{L}])/giu;
const YEARS = /^(y|j|an|añ)/i;
const OPENED = /open|öffn|anbruch|ouvert|abr|apertura/i;
const UNOPENED =
  /unopen|ungeöffn|non ouvert|non entam|sin abrir|cerrado|originalverschlossen|before opening|vor (dem )?öffn|avant ouverture/i;

/** How long a material keeps, in months: unopened and once opened; null where that is not said, or not clearly. */
export interface Keeping {
  unopened: number | null;
  opened: number | null;
}

const only = (found: readonly number[]): number | null =>
  new Set(found).size === 1 ? (found[0] ?? null) : null;

/** @param once whether the text as a whole speaks of a material that was opened */
export function keepingOf(text: string, once = false): Keeping {
  const found = { unopened: [] as number[], opened: [] as number[] };
  for (const clause of text.split(/[;]|[.,](?!\d)|\s(?:and|und|et|y)\s/)) {
    const opened = once || (OPENED.test(clause) && !UNOPENED.test(clause));
    for (const [, other, amount, unit] of clause.matchAll(DURATION)) {
      // Of “24 to 36 months” neither is sure.
      const read = readNumber(other === undefined ? (amount ?? '') : '');
      const months = read.ok ? read.value * (YEARS.test(unit ?? '') ? 12 : 1) : NaN;
      if (Number.isInteger(months) && months > 0 && months <= 120)
        found[opened ? 'opened' : 'unopened'].push(months);
    }
  }
  return { unopened: only(found.unopened), opened: only(found.opened) };
}
