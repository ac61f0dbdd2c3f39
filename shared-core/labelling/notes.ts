import { joined } from '../locale/words';
import { partPpm } from '../materials/composition';
import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';
import { ALLERGENS_2023, type AllergenRule } from './allergens';
import type { Ingredient } from './ingredient';
import { isSmall } from './order';
import type { LabelForm } from './substance-names';

interface Noted {
  form: LabelForm;
  ingredients: readonly Ingredient[];
  /** Lines whose material is no longer there. */
  missing: number;
  materials: readonly Material[];
  nameOf: (material: Material) => string;
  allergens: AllergenRule;
  tableEmpty: boolean;
}

/** Those that the suppliers' ranges may bring to either side of 1 %. */
function astrideOnePercent({ ingredients, form }: Pick<Noted, 'ingredients' | 'form'>): string[] {
  return ingredients
    .filter(
      ({ group, lowPpm, highPpm }) =>
        (group === 'by weight' || group === 'any order') && isSmall(lowPpm, form) !== isSmall(highPpm, form),
    )
    .map(({ name }) => name);
}

/** Neighbours that the suppliers' ranges may bring into the other order. */
function overlapping({ ingredients }: Pick<Noted, 'ingredients'>): string[] {
  const weighed = ingredients.filter(({ group }) => group === 'by weight');
  return weighed.flatMap((one, at) => {
    const next = weighed[at + 1];
    return next && next.highPpm > one.lowPpm ? [`${one.name} and ${next.name}`] : [];
  });
}

function certainty(noted: Noted): string[] {
  const { ingredients } = noted;
  const astride = astrideOnePercent(noted);
  const neighbours = overlapping(noted);
  return [
    ...(ingredients.some(({ estimated }) => estimated)
      ? ['Names marked as estimates use the midpoint of a supplier’s range.']
      : []),
    ...(astride.length > 0
      ? [`By the suppliers’ ranges above or below 1 %, so its place is not certain: ${joined(astride)}.`]
      : []),
    ...(neighbours.length > 0
      ? [`Suppliers’ ranges overlap, so the order may be the other way: ${neighbours.join('; ')}.`]
      : []),
  ];
}

function aboutAllergens({ form, allergens, tableEmpty }: Noted): string[] {
  if (form === 'US') return ['Fragrance allergens are not marked on this form.'];
  if (tableEmpty) return ['No substances are in the library, so no allergen is declared: add the examples.'];
  return [
    allergens === '2023'
      ? `Allergens by ${ALLERGENS_2023.text}: for products new on the market from 31 July 2026, on the shelf from 31 July 2028.`
      : `The 26 allergens from before ${ALLERGENS_2023.text}: for products on the market before 31 July 2026, on the shelf until 31 July 2028. Great Britain had not taken over the longer list when this was written.`,
  ];
}

/** What a reader of an ingredient list must know before trusting it. */
export function labelNotes(noted: Noted): string[] {
  const { form, ingredients, missing, materials, nameOf } = noted;
  const open = materials.filter(
    ({ composition }) => Math.abs(composition.reduce((sum, part) => sum + partPpm(part), 0) - WHOLE_PPM) > 10,
  );
  const nameless = materials.filter(({ composition }) => composition.every(({ inci }) => inci.trim() === ''));
  const free = ingredients.filter(({ known }) => !known).map(({ name }) => name);
  const limit = form === 'EU' ? 'below 1 %' : 'of 1 % or less';
  return [
    ...(missing > 0
      ? [`${missing} line${missing === 1 ? '' : 's'} left out: the material is no longer in the library.`]
      : []),
    ...nameless.map((one) => `${nameOf(one)} has no composition, so the list lacks it.`),
    ...open.map(
      (one) => `The composition of ${nameOf(one)} does not come to 100 %, so its names are approximate.`,
    ),
    ...certainty(noted),
    ...(free.length > 0 && !noted.tableEmpty
      ? [`Free text, as written at the material and in no table of substances: ${joined(free)}.`]
      : []),
    ...(ingredients.some(({ group }) => group === 'any order')
      ? [`Ingredients ${limit} may follow in any order; here they follow by weight.`]
      : []),
    ...(form === 'US'
      ? ['Active drug ingredients come first on a US label, under a heading of their own.']
      : []),
    ...aboutAllergens(noted),
    'A working list, not legal advice: check it against the law where the product is sold.',
  ];
}
