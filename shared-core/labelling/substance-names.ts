import type { MaterialFunction } from '../materials/vocabulary';

/** Whose form the list takes. Both use INCI names; a few common names differ. */
export const LABEL_FORMS = ['EU', 'US'] as const;
export type LabelForm = (typeof LABEL_FORMS)[number];

// Names that the two forms write differently; common practice, no source, except parfum (Reg. 1223/2009,
// Art. 19(1)(g)) and fragrance (21 CFR 701.3(a)). All others print as the maker wrote them.
const TWO_NAMES: { EU: string; US: string; written: RegExp }[] = [
  { EU: 'Aqua', US: 'Water', written: /^(aqua|water|eau)(\s*[(/,]\s*(aqua|water|eau)\s*\)?)*$/i },
  { EU: 'Parfum', US: 'Fragrance', written: /^(parfum|fragrance|aroma|perfume)(\s*[(/]\s*\w+\s*\)?)?$/i },
];

/** The name a substance takes on a label of one form. */
export function labelName(inci: string, form: LabelForm): string {
  const plain = inci.trim().replace(/\s+/g, ' ');
  return TWO_NAMES.find((pair) => pair.written.test(plain))?.[form] ?? plain;
}

/** What a fragrance, whatever it is made of, is called on a label of one form. */
export function fragranceName(form: LabelForm): string {
  return form === 'EU' ? 'Parfum' : 'Fragrance';
}

/** A colour index name ("CI 77491") is a colorant wherever it stands. */
export function isColourIndexName(inci: string): boolean {
  return /^CI\s?\d{5}\b/i.test(inci.trim());
}

/**
 * Whether one INCI name of a material counts as a colorant: a colour index name always, and in a material
 * bought as a colorant that has none, all that is not water.
 */
export function isColorant(
  inci: string,
  material: { functions: readonly MaterialFunction[]; composition: readonly { inci: string }[] },
): boolean {
  if (isColourIndexName(inci)) return true;
  if (!material.functions.includes('colorant')) return false;
  return (
    !material.composition.some((part) => isColourIndexName(part.inci)) && labelName(inci, 'EU') !== 'Aqua'
  );
}
