import type { FormulaContent } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import { amountOf, contentsOf, type Dosed } from '../limits/contents';
import { dosedLines } from '../limits/in-formula';
import { NO_LAW, type Law } from '../limits/law';
import { partPpm } from '../materials/composition';
import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';
import { namesWithin } from '../substances/names';
import { substanceIndex, type SubstanceIndex } from '../substances/substance-index';
import { declarableAllergens, type AllergenRule } from './allergens';
import type { Ingredient } from './ingredient';
import { labelNotes } from './notes';
import { groupOf, inLabelOrder } from './order';
import { calledOn, fragranceName, isFragrance, type Called, type LabelForm } from './substance-names';

export type { IngredientGroup } from './order';

export interface IngredientList {
  form: LabelForm;
  /** The list of allergens that it follows; none on a label of the United States. */
  allergens: AllergenRule | null;
  ingredients: Ingredient[];
  /** Colorants of other shades: lines of colorants without a share. */
  mayContain: string[];
  /** The names joined as they would stand on the label. */
  text: string;
  notes: string[];
}

export type MaterialsById = Readonly<Record<string, Material | undefined>>;

/** How a list is made. */
export interface ListOptions {
  form?: LabelForm;
  /** What the library knows of substances: without it names stand as they are written. */
  law?: Law;
  allergens?: AllergenRule;
  /** How the notes call a material. */
  nameOf?: (material: Material) => string;
}

type Sum = Omit<Ingredient, 'group'> & { colourIndices: string[] };

interface Listing {
  form: LabelForm;
  index: SubstanceIndex;
  /** Colours the hair itself: not among the colorants that come last. */
  hairDye: boolean;
  /** A drug in the United States, whose UV filters are its actives. */
  sunscreen: boolean;
}

type Added = Pick<Sum, 'ppm' | 'lowPpm' | 'highPpm' | 'activeDrug'>;

function add(sums: Map<string, Sum>, called: Called, amounts: Added, id: string) {
  const { key, name, colourIndex, colorant, substance } = called;
  const indices = colourIndex === '' ? [] : [colourIndex];
  const known = sums.get(key);
  const estimated = amounts.lowPpm !== amounts.highPpm;
  if (!known) {
    const made = { name, ...amounts, estimated, colorant, allergen: false, known: substance !== null };
    sums.set(key, { ...made, materialIds: [id], colourIndices: indices });
    return;
  }
  known.ppm += amounts.ppm;
  known.lowPpm += amounts.lowPpm;
  known.highPpm += amounts.highPpm;
  known.estimated ||= estimated;
  // A substance that also comes in as something else than a colorant is listed by its weight.
  known.colorant &&= colorant;
  known.activeDrug ||= amounts.activeDrug;
  if (!known.materialIds.includes(id)) known.materialIds.push(id);
  known.colourIndices = [...new Set([...known.colourIndices, ...indices])];
}

function callPart(inci: string, material: Material, { form, index, hairDye }: Listing): Called {
  if (isFragrance(material)) {
    const name = fragranceName(form);
    return { key: name.toLowerCase(), name, colourIndex: '', colorant: false, substance: index.find(name) };
  }
  const called = calledOn(inci, material, form, index);
  return hairDye ? { ...called, colorant: false } : called;
}

function addLine(sums: Map<string, Sum>, { material, ppm }: Dosed, listing: Listing): void {
  const of = (share: number): number => (ppm * share) / WHOLE_PPM;
  const activeDrug = listing.sunscreen && material.functions.includes('uv filter');
  for (const part of material.composition) {
    const names = listing.index.find(part.inci) ? [part.inci] : namesWithin(part.inci);
    // Several that a supplier wrote into one: how they share it is not known.
    const lowPpm = of(names.length > 1 ? 0 : part.lowPpm);
    for (const inci of names) {
      const amounts = {
        ppm: of(partPpm(part)) / names.length,
        lowPpm,
        highPpm: of(part.highPpm),
        activeDrug,
      };
      add(sums, callPart(inci, material, listing), amounts, material.id);
    }
  }
}

/** Names what must be declared: an ingredient that stands there already is marked, and takes the name of its group. */
function addAllergens(
  sums: Map<string, Sum>,
  dosed: readonly Dosed[],
  use: FormulaContent['use'],
  rule: AllergenRule,
  index: SubstanceIndex,
) {
  const contents = contentsOf(dosed, index);
  for (const { label, materialIds, substances } of declarableAllergens(contents, use, rule).declared) {
    const own = substances.flatMap(({ name }) => sums.get(name.toLowerCase()) ?? []);
    for (const { name } of substances) sums.delete(name.toLowerCase());
    // All that brings it counts, a perfume’s share too, which the list shows as parfum.
    const { low, used, high } = amountOf(
      substances.flatMap(({ id }) => contents.present.get(id)?.parts ?? []),
    );
    const plain = { colorant: false, activeDrug: false, known: true, colourIndices: [] };
    sums.set(label.toLowerCase(), {
      ...(own[0] ?? plain),
      name: label,
      ppm: used,
      lowPpm: low,
      highPpm: high,
      estimated: low !== high,
      allergen: true,
      materialIds,
    });
  }
}

function finished({ colourIndices, ...sum }: Sum, form: LabelForm): Ingredient {
  const name = colourIndices.length > 0 ? `${sum.name} (${colourIndices.sort().join(', ')})` : sum.name;
  return { ...sum, name, group: groupOf(sum, form) };
}

/** Colorants that a formula names without a share: those of the other shades of a range. */
function otherShades(
  content: Pick<FormulaContent, 'phases'>,
  materials: MaterialsById,
  listing: Listing,
  listed: readonly Ingredient[],
): string[] {
  const here = new Set(listed.map(({ name }) => name.toLowerCase()));
  const names = dosedLines(content, (id) => materials[id])
    .filter(({ ppm, material }) => ppm === 0 && material.functions.includes('colorant'))
    .flatMap(({ material }) => material.composition.map(({ inci }) => callPart(inci, material, listing)))
    .filter(({ colorant }) => colorant)
    .map(({ name, colourIndex }) => (colourIndex === '' ? name : `${name} (${colourIndex})`));
  return [...new Set(names)].filter((name) => !here.has(name.toLowerCase())).sort();
}

function joinedText(
  ingredients: readonly Ingredient[],
  mayContain: readonly string[],
  form: LabelForm,
): string {
  const list = ingredients.map(({ name }) => name).join(', ');
  if (mayContain.length === 0) return list;
  const others = mayContain.join(', ');
  return form === 'EU' ? `${list} (+/− ${others})` : `${list}. May contain: ${others}`;
}

/**
 * The ingredient list of a formula: substances summed over all blends and called as the form calls them, descending by
 * weight, those under 1 % after them, colorants last (those of a hair dye by weight), a fragrance as Parfum or
 * Fragrance, nano forms marked, and for the EU the fragrance allergens above 0.001 % (leave-on) or 0.01 % (rinse-off).
 *
 * Source: Regulation (EC) No 1223/2009, Article 19(1)(g) (from memory), with (EU) 2023/1545; 21 CFR 701.3 (partly from
 * memory); allergen thresholds as in Annex III (read in summaries).
 *
 * @param materials by id, as they were when the version was recorded, or as they are now for a draft
 */
export function ingredientList(
  content: Pick<FormulaContent, 'phases' | 'use' | 'market'>,
  materials: MaterialsById,
  options: ListOptions = {},
): IngredientList {
  const {
    form = 'EU',
    law = NO_LAW,
    allergens = '2023',
    nameOf = ({ tradeName }: Material) => tradeName,
  } = options;
  const index = substanceIndex(law.substances);
  const hairDye = form === 'EU' && (content.market.kind?.endsWith('hair dye') ?? false);
  const sunscreen = form === 'US' && content.market.kind === 'sunscreen product';
  const listing = { form, index, hairDye, sunscreen };
  const sums = new Map<string, Sum>();
  const dosed = dosedLines(content, (id) => materials[id]).filter(({ ppm }) => ppm > 0);
  for (const line of dosed) addLine(sums, line, listing);
  if (form === 'EU') addAllergens(sums, dosed, content.use, allergens, index);
  const all = [...sums.values()].filter(({ ppm, highPpm }) => ppm > 0 || highPpm > 0);
  const ingredients = inLabelOrder(
    all.map((sum) => finished(sum, form)),
    form,
  );
  const mayContain = otherShades(content, materials, listing, ingredients);
  const missing = formulaLines(content).filter((line) => !materials[line.materialId]).length;
  return {
    form,
    allergens: form === 'EU' ? allergens : null,
    ingredients,
    mayContain,
    text: joinedText(ingredients, mayContain, form),
    notes: labelNotes({
      form,
      ingredients,
      missing,
      materials: [...new Set(dosed.map(({ material }) => material))],
      nameOf,
      allergens,
      tableEmpty: law.substances.length === 0,
    }),
  };
}
