import type { FormulaContent, TargetSpecification } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import type { Material } from '../materials/material';
import { inciWords } from '../materials/words';

export type MaterialsById = Readonly<Record<string, Material | undefined>>;

/** How a material is called on a sheet: by its trade name, or by its INCI names. */
export function sheetName(material: Material, tradeNames: boolean): string {
  return tradeNames ? material.tradeName : inciWords(material) || 'raw material without an INCI name';
}

/** A name to hide, and what to print instead. */
interface Hidden {
  name: string;
  shown: string;
  /** Finds it, but for the bounds of a word. */
  pattern: string;
  /** Found as it is written only: in any case, an item code "OIL" would be a word of the text. */
  exact?: boolean;
}

const plain = (text: string): string => text.normalize('NFC').trim();
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** A name is found however its words are parted: "VQ 7", "VQ-7", "VQ7". */
function hiddenName(given: string, shown: string): Hidden[] {
  const name = plain(given);
  const words = name.split(/[\s\p{Pd}]+/u).filter(Boolean);
  return words.length > 0 ? [{ name, shown, pattern: words.map(escaped).join('[\\s\\p{Pd}]*') }] : [];
}

// "1000" may be an item code; "1000 rpm" is a figure of the procedure.
const NOT_A_FIGURE = '(?![.,]?\\d|\\s*(?:%|°|rpm|min|s\\b|h\\b|mg|g\\b|kg|mL|L\\b|ppm|Pa|mPa))';

function hiddenCode(given: string, shown: string): Hidden[] {
  const name = plain(given);
  const [letters, digits] = [/\p{L}/u.test(name), /\p{N}/u.test(name)];
  // Shorter ones are met as letters of phases and as figures everywhere.
  if (name.length < (letters ? 3 : 4)) return [];
  return [{ name, shown, pattern: escaped(name) + (letters ? '' : NOT_A_FIGURE), exact: !digits }];
}

function hiddenNames(content: FormulaContent, materials: MaterialsById, tradeNames: boolean): Hidden[] {
  const used = [...new Set(formulaLines(content).flatMap((line) => materials[line.materialId] ?? []))];
  const owners = (code: string): Material[] =>
    used.filter((one) => one.offers.some((offer) => offer.itemCode === code));
  const hidden = used.flatMap((material): Hidden[] => {
    const shown = sheetName(material, tradeNames);
    return [
      // With trade names each stays as it is, even where a supplier's name is a part of it.
      ...hiddenName(material.tradeName, shown),
      ...material.offers.flatMap(({ supplier, itemCode }) => [
        ...hiddenName(supplier, 'the supplier'),
        ...hiddenCode(itemCode, owners(itemCode).length === 1 ? shown : 'the item'),
      ]),
    ];
  });
  // Longest first, so that no part of a name stays behind.
  return hidden.sort((a, b) => b.name.length - a.name.length);
}

/** One rule for all names, so that what is printed for one is never taken for another. */
function cleaner(hidden: readonly Hidden[]): (text: string) => string {
  if (hidden.length === 0) return (text) => text;
  const any = hidden.map(({ pattern }) => `(${pattern})`).join('|');
  const rule = new RegExp(`(?<![\\p{L}\\p{N}])(?:${any})(?![\\p{L}\\p{N}])`, 'giu');
  return (text) =>
    text.normalize('NFC').replace(rule, (found: string, ...groups: unknown[]) => {
      const one = hidden[groups.findIndex((group) => typeof group === 'string')];
      if (!one || (one.exact && found !== one.name)) return found;
      // A name that already is what would be printed keeps the case in which it stands.
      return one.name === one.shown ? found : one.shown;
    });
}

/**
 * A formula as it may be shared: suppliers' names and item codes, and trade names unless asked for, are replaced
 * wherever they stand in its texts, its own name among them; the maker's notes stay behind. Names are found as whole
 * words, in any case.
 */
export function forSharing(
  content: FormulaContent,
  materials: MaterialsById,
  tradeNames: boolean,
): FormulaContent {
  const clean = cleaner(hiddenNames(content, materials, tradeNames));
  const { target } = content;
  const words: Partial<TargetSpecification> = {
    appearance: clean(target.appearance),
    odour: clean(target.odour),
    colour: clean(target.colour),
    viscosityMethod: clean(target.viscosityMethod),
    microbiology: clean(target.microbiology),
  };
  return {
    ...content,
    code: clean(content.code),
    name: clean(content.name),
    purpose: clean(content.purpose),
    notes: '',
    phases: content.phases.map((phase) => ({
      ...phase,
      title: clean(phase.title),
      lines: phase.lines.map((line) => ({ ...line, note: clean(line.note) })),
    })),
    steps: content.steps.map((step) => ({
      ...step,
      instruction: clean(step.instruction),
      lookFor: clean(step.lookFor),
      caution: clean(step.caution),
    })),
    target: { ...target, ...words },
  };
}
