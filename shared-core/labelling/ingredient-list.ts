import type { FormulaContent } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import { partPpm } from '../materials/composition';
import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';
import { declarableAllergens } from './allergens';
import { fragranceName, isColorant, labelName } from './substance-names';
import type { LabelForm } from './substance-names';

/** Where a name stands: by weight, after those in any order, or last. */
export type IngredientGroup = 'by weight' | 'any order' | 'colorant';

export interface Ingredient {
  name: string;
  /** Content in ppm of the formula; a supplier's range counts at its midpoint. */
  ppm: number;
  lowPpm: number;
  highPpm: number;
  /** True where a supplier's range went into `ppm`. */
  estimated: boolean;
  group: IngredientGroup;
  /** Declared because it passes the threshold for fragrance allergens. */
  allergen: boolean;
  materialIds: string[];
}

export interface IngredientList {
  form: LabelForm;
  ingredients: Ingredient[];
  /** The names joined as they would stand on the label. */
  text: string;
  notes: string[];
}

export type MaterialsById = Readonly<Record<string, Material | undefined>>;

/** One per cent. The EU lets those below it follow in any order, the US those not above it. */
const ONE_PERCENT_PPM = 10_000;

interface Sum extends Omit<Ingredient, 'group'> {
  colorant: boolean;
}

function add(
  sums: Map<string, Sum>,
  name: string,
  share: Omit<Sum, 'name' | 'materialIds'>,
  materialId: string,
) {
  const key = name.toLowerCase();
  const known = sums.get(key);
  if (!known) {
    sums.set(key, { name, ...share, materialIds: [materialId] });
    return;
  }
  known.ppm += share.ppm;
  known.lowPpm += share.lowPpm;
  known.highPpm += share.highPpm;
  known.estimated ||= share.estimated;
  // A substance that also comes in as something else than a colorant is listed by its weight.
  known.colorant &&= share.colorant;
  known.allergen ||= share.allergen;
  if (!known.materialIds.includes(materialId)) known.materialIds.push(materialId);
}

function addMaterial(sums: Map<string, Sum>, material: Material, linePpm: number, form: LabelForm) {
  const fragrance = material.functions.includes('fragrance');
  const of = (ppm: number): number => (linePpm * ppm) / WHOLE_PPM;
  for (const part of material.composition) {
    const share = {
      ppm: of(partPpm(part)),
      lowPpm: of(part.lowPpm),
      highPpm: of(part.highPpm),
      estimated: part.lowPpm !== part.highPpm,
      colorant: !fragrance && isColorant(part.inci, material),
      allergen: false,
    };
    add(sums, fragrance ? fragranceName(form) : labelName(part.inci, form), share, material.id);
  }
}

function addAllergens(sums: Map<string, Sum>, content: FormulaContent, materials: MaterialsById) {
  for (const { inci, ppm, materialIds } of declarableAllergens(content, materials).declared) {
    const known = sums.get(inci.toLowerCase());
    if (known) known.allergen = true;
    else {
      const share = { ppm, lowPpm: ppm, highPpm: ppm, estimated: false, colorant: false, allergen: true };
      sums.set(inci.toLowerCase(), { name: inci, ...share, materialIds });
    }
  }
}

function groupOf(sum: Sum, form: LabelForm): IngredientGroup {
  if (sum.colorant) return 'colorant';
  const small = form === 'EU' ? sum.ppm < ONE_PERCENT_PPM : sum.ppm <= ONE_PERCENT_PPM;
  return small ? 'any order' : 'by weight';
}

const GROUP_ORDER: readonly IngredientGroup[] = ['by weight', 'any order', 'colorant'];

function overlaps(ingredients: readonly Ingredient[]): boolean {
  const weighed = ingredients.filter((one) => one.group === 'by weight');
  return weighed.some((one, index) => {
    const next = weighed[index + 1];
    return next !== undefined && next.highPpm > one.lowPpm;
  });
}

function notesOn(
  content: FormulaContent,
  materials: MaterialsById,
  list: Ingredient[],
  form: LabelForm,
  nameOf: (material: Material) => string,
) {
  const notes: string[] = [];
  const lines = formulaLines(content);
  const missing = lines.filter((line) => !materials[line.materialId]).length;
  if (missing > 0)
    notes.push(
      `${missing} line${missing === 1 ? '' : 's'} left out: the material is no longer in the library.`,
    );
  const open = [...new Set(lines.flatMap((line) => materials[line.materialId] ?? []))].filter(
    (one) => Math.abs(one.composition.reduce((sum, part) => sum + partPpm(part), 0) - WHOLE_PPM) > 10,
  );
  for (const one of open)
    notes.push(`The composition of ${nameOf(one)} does not come to 100 %, so its names are approximate.`);
  if (list.some((one) => one.estimated))
    notes.push('Names marked as estimates use the midpoint of a supplier’s range.');
  if (overlaps(list))
    notes.push('Suppliers’ ranges overlap here: the order of neighbours may be the other way.');
  const limit = form === 'EU' ? 'below 1 %' : 'of 1 % or less';
  if (list.some((one) => one.group === 'any order'))
    notes.push(`Ingredients ${limit} may follow in any order; here they follow by weight.`);
  if (form === 'US')
    notes.push(
      'Active drug ingredients come first on a US label, and fragrance allergens are not marked here.',
    );
  notes.push('A working list, not legal advice: check it against the law where the product is sold.');
  return notes;
}

/**
 * The ingredient list of a formula: INCI names summed over all blends, descending by weight; those under 1 %
 * after them, colorants last, a fragrance as Parfum (EU) or Fragrance (US), and for the EU the fragrance
 * allergens above 0.001 % (leave-on) or 0.01 % (rinse-off).
 *
 * Source: Regulation (EC) No 1223/2009, Article 19(1)(g) (from memory); 21 CFR 701.3(a), (f) (the latter from
 * memory); allergen thresholds as in its Annex III (read in summaries of Regulation (EU) 2023/1545).
 *
 * @param materials by id, as they were when the version was recorded, or as they are now for a draft
 * @param nameOf how the notes call a material
 */
export function ingredientList(
  content: FormulaContent,
  materials: MaterialsById,
  form: LabelForm = 'EU',
  nameOf: (material: Material) => string = (material) => material.tradeName,
): IngredientList {
  const sums = new Map<string, Sum>();
  const shares = formulaShares(content).byLine;
  for (const line of formulaLines(content)) {
    const material = materials[line.materialId];
    const linePpm = shares.get(line.id) ?? 0;
    if (material && linePpm > 0) addMaterial(sums, material, linePpm, form);
  }
  if (form === 'EU') addAllergens(sums, content, materials);
  const ingredients = [...sums.values()]
    .filter((sum) => sum.ppm > 0)
    .map(({ colorant, ...sum }) => ({ ...sum, group: groupOf({ ...sum, colorant }, form) }))
    .sort(
      (a, b) =>
        GROUP_ORDER.indexOf(a.group) - GROUP_ORDER.indexOf(b.group) ||
        b.ppm - a.ppm ||
        a.name.localeCompare(b.name, 'en'),
    );
  return {
    form,
    ingredients,
    text: ingredients.map((one) => one.name).join(', '),
    notes: notesOn(content, materials, ingredients, form, nameOf),
  };
}
