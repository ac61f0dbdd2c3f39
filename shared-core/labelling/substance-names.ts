import type { Material } from '../materials/material';
import type { Substance } from '../substances/substance';
import type { SubstanceIndex } from '../substances/substance-index';
import { saysNano } from '../substances/names';

/** Whose form the list takes. Both use INCI names; a few common names differ. */
export const LABEL_FORMS = ['EU', 'US'] as const;
export type LabelForm = (typeof LABEL_FORMS)[number];
export const LABEL_FORM_NAMES: Record<LabelForm, string> = { EU: 'European Union', US: 'United States' };

// Names that the two forms write differently where the table of substances does not say; common practice, no source,
// except parfum (Reg. 1223/2009, Art. 19(1)(g)) and fragrance (21 CFR 701.3(a)).
const TWO_NAMES: { EU: string; US: string; written: RegExp }[] = [
  { EU: 'Aqua', US: 'Water', written: /^(aqua|water|eau)(\s*[(/,]\s*(aqua|water|eau)\s*\)?)*$/i },
  { EU: 'Parfum', US: 'Fragrance', written: /^(parfum|fragrance|perfume)(\s*[(/]\s*\w+\s*\)?)?$/i },
  { EU: 'Aroma', US: 'Flavor', written: /^(aroma|flavou?r)(\s*[(/]\s*\w+\s*\)?)?$/i },
];

/** The name a written substance takes on a label of one form, by what is written alone. */
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
  return /^C\.?\s?I\.?\s?\d{5}\b/i.test(inci.trim());
}

const isWater = (inci: string): boolean => labelName(inci, 'EU') === 'Aqua';

/** Whether one name of a material colours the product: a colour index name, or what a colorant without one is made of. */
export function isColorant(inci: string, material: Pick<Material, 'functions' | 'composition'>): boolean {
  if (isColourIndexName(inci))
    return !material.functions.includes('uv filter') || material.functions.includes('colorant');
  if (!material.functions.includes('colorant')) return false;
  return !material.composition.some((part) => isColourIndexName(part.inci)) && !isWater(inci);
}

/** Waters of plants carry scent, but are no perfume. */
const PLANT_WATER = /\b(water|hydrolat|hydrosol|distillate)\b/i;

/**
 * Whether a material goes on the label as the fragrance that it is: a perfume composition or its raw material, bought
 * for nothing but its scent. What also preserves, conditions or acts keeps its names, and so does a plant's water.
 */
export function isFragrance({
  functions,
  composition,
}: Pick<Material, 'functions' | 'composition'>): boolean {
  return (
    functions.includes('fragrance') &&
    functions.every((one) => one === 'fragrance' || one === 'solvent') &&
    !composition.some(
      ({ inci, highPpm }) => PLANT_WATER.test(inci) && !/^water$/i.test(inci.trim()) && highPpm > 0,
    )
  );
}

/** What one written name of a material is called on a label, and by what its amounts are summed. */
export interface Called {
  /** The same for the same substance, however it is spelled. */
  key: string;
  name: string;
  /** The colour index that follows the name of a colorant in the United States; empty for none. */
  colourIndex: string;
  colorant: boolean;
  substance: Substance | null;
}

function colorantName(
  substance: Substance | null,
  written: string,
  form: LabelForm,
): Omit<Called, 'key' | 'substance'> {
  const index = substance?.colourIndex || (isColourIndexName(written) ? written.trim() : '');
  const us = substance ? substance.usName || substance.name : written;
  if (form === 'EU') return { name: index || (substance?.name ?? written), colourIndex: '', colorant: true };
  return { name: us, colourIndex: us === index ? '' : index, colorant: true };
}

/** How a part of a material is called on a label. */
export function calledOn(
  written: string,
  material: Material,
  form: LabelForm,
  index: SubstanceIndex,
): Called {
  const substance = index.find(written);
  const colorant = isColorant(written, material);
  const nano = form === 'EU' && saysNano(written);
  const plain = colorant
    ? colorantName(substance, written, form)
    : {
        name: substance
          ? form === 'US' && substance.usName !== ''
            ? substance.usName
            : substance.name
          : labelName(written.replace(/\s*[([]\s*nano\s*[)\]]/gi, ''), form),
        colourIndex: '',
        colorant: false,
      };
  const name = nano ? `${plain.name} (nano)` : plain.name;
  return { ...plain, name, key: name.toLowerCase(), substance };
}
