import type { CmrClass } from './cmr-classes';
import { namesWithin, nameKey } from './names';
import type { Substance } from './substance';
import type { SubstanceIndex } from './substance-index';

/**
 * Substances that are classed, by INCI name. Source: Regulation (EC) No 1272/2008, Annex VI, from memory; classes change.
 * They stand in the examples of a library, and count for a name that its table says nothing of. Titanium dioxide is not
 * among them: its class as a powder breathed in was annulled by the General Court on 23 November 2022 (T-279/20, T-283/20
 * and T-288/20), and the appeals were dismissed by the Court of Justice on 1 August 2025 (C-71/23 P and C-82/23 P); from
 * memory.
 */
export const KNOWN_CMR: Readonly<Record<string, CmrClass>> = {
  Formaldehyde: '1A or 1B',
  'Boric Acid': '1A or 1B',
  'Sodium Borate': '1A or 1B',
  'Perboric Acid': '1A or 1B',
  'Butylphenyl Methylpropional': '1A or 1B',
  'Zinc Pyrithione': '1A or 1B',
  'Trimethylbenzoyl Diphenylphosphine Oxide': '1A or 1B',
  'N-Methyl-2-Pyrrolidone': '1A or 1B',
  'Methyl Pyrrolidone': '1A or 1B',
  '4-Methylbenzylidene Camphor': '1A or 1B',
  'Dibutyl Phthalate': '1A or 1B',
  'Lead Acetate': '1A or 1B',
  'Coal Tar': '1A or 1B',
  Benzophenone: '1A or 1B',
  Acrylamide: '1A or 1B',
  'Salicylic Acid': '2',
  'Methyl Salicylate': '2',
  Hydroquinone: '2',
  Toluene: '2',
  Hexane: '2',
  'Polyaminopropyl Biguanide': '2',
  'Quaternium-15': '2',
  Furfural: '2',
  Climbazole: '2',
  Cyclotetrasiloxane: '2',
  'p-Aminophenol': '2',
};
const BY_KEY = new Map(Object.entries(KNOWN_CMR).map(([name, cmr]) => [nameKey(name), cmr]));

type Classed = Exclude<CmrClass, 'not classed'>;
const GRAVEST_FIRST: readonly Classed[] = ['1A or 1B', '2', '2, as a powder breathed in'];

function classOfOne(written: string, index: SubstanceIndex): Classed | null {
  const substance: Substance | null = index.find(written);
  const said = substance?.cmrClass ?? BY_KEY.get(nameKey(substance?.name ?? written)) ?? null;
  return said === 'not classed' ? null : said;
}

/**
 * What a written name is classed as: as the library's table of substances says, else as is known of it; null for none.
 * Of several that a supplier wrote into one the gravest counts.
 */
export function cmrClassOf(written: string, index: SubstanceIndex): Classed | null {
  const names = index.find(written) ? [written] : namesWithin(written);
  const classes = names.map((name) => classOfOne(name, index));
  return GRAVEST_FIRST.find((one) => classes.includes(one)) ?? null;
}
