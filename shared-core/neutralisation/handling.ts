import type { Hazard } from '../materials/vocabulary';

/** What is known of an acid or base as to how it is handled. */
export interface Substance {
  /** Its names: as typed, its trade name, its INCI names. */
  names: readonly string[];
  hazards: readonly Hazard[];
}

const FIRST_AID = 'Splashes: rinse at once with running water, eyes for 15 minutes, then see a doctor.';
const SHEET = 'Its safety data sheet and local rules go before this.';
const CAUSTIC = `burns eyes and skin: face shield or goggles, gloves and apron. Add it to cold water in portions, never water to it; it heats. Never in aluminium. ${FIRST_AID} ${SHEET}`;
const AMINE = `An amine, irritates eyes and skin and burns them undiluted: goggles and gloves. Never beside nitrite or another nitrosating agent: nitrosamines can form. ${FIRST_AID} ${SHEET}`;
const STRONG_ACID = `burns eyes and skin: face shield or goggles, gloves and apron. Add the acid to water, never water to it. ${FIRST_AID} ${SHEET}`;
const IRRITANT_ACID = `irritates the eyes, and the skin when concentrated: goggles and gloves. ${FIRST_AID} ${SHEET}`;

// The short ones as whole words: polyethyleneimine is no lye.
const ALKALIS = /hydroxide|\b(naoh|koh|lye)\b|caustic soda|caustic potash|sodium oxide|ammonia/i;
const AMINES = ['amine', 'imine', 'aminomethyl propan', 'tromethamine', 'amino', 'tea 85', 'tea 99', 'tris('];
const STRONG_ACIDS = [
  'phosphoric',
  'hydrochloric',
  'sulfuric',
  'nitric',
  'sulfonic acid',
  'glycolic',
  'formic',
  'trichloroacetic',
];
const IRRITANT_ACIDS = [
  'lactic',
  'citric',
  'malic',
  'tartaric',
  'mandelic',
  'salicylic',
  'benzoic',
  'sorbic',
  'acetic',
  'propionic',
];

const named = ({ names }: Substance, words: readonly string[]): boolean =>
  names.some((name) => words.some((word) => name.toLowerCase().includes(word)));

/**
 * How a base is handled, by what it is: recorded hazards, then its name. A base of which neither is known, and no pKa
 * of an amine either, is taken for an alkali. Common practice, no source; safety data sheets go before it.
 */
export function baseHandling(base: Substance, pKaConjugateAcid: number | null): string {
  if (base.hazards.includes('caustic') || base.names.some((name) => ALKALIS.test(name)))
    return `Caustic, ${CAUSTIC}`;
  if (named(base, AMINES) || pKaConjugateAcid !== null) return AMINE;
  return `Nothing is known here of this base, so take it for a caustic: it ${CAUSTIC}`;
}

/** How an acid is handled, likewise; null for one that needs no more than what is said of any powder or liquid. */
export function acidHandling(acid: Substance): string | null {
  if (acid.hazards.includes('strong acid') || named(acid, STRONG_ACIDS)) return `Strong acid, ${STRONG_ACID}`;
  if (named(acid, IRRITANT_ACIDS) || acid.hazards.includes('irritant')) return `The acid ${IRRITANT_ACID}`;
  return null;
}
