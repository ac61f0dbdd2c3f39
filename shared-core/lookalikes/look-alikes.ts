import type { InciPart } from '../materials/composition';
import { labelName } from '../labelling/substance-names';
import { fold, foldedWords } from '../quantities/fold';
import { nameKey } from '../substances/names';
import { isNear, nearKeys } from './near-names';

/** What two materials are taken to be alike by. */
export const LIKENESSES = ['code', 'name', 'substances'] as const;
export type Likeness = (typeof LIKENESSES)[number];

export const LIKENESS_WORDS: Readonly<Record<Likeness, string>> = {
  code: 'the same code',
  name: 'nearly the same name',
  substances: 'the same substances',
};

/** What must be known of a material to tell that another looks like it. */
export interface Sketch {
  id: string;
  tradeName: string;
  code: string;
  composition: readonly InciPart[];
}

export interface Alike {
  id: string;
  by: Likeness[];
}

/** Letters and figures alone: R-012, r 012 and R012 are one code. */
const bare = (text: string): string => foldedWords(text).join('');

/** Its figures in their order: a name with another figure is another grade. */
const figuresOf = (text: string): string => (fold(text).match(/\d+/g) ?? []).join(' ');

/** Two perfumes are both Parfum, and are not the same for that. */
const saysWhatItIs = ({ inci }: InciPart): boolean => !['Parfum', 'Aroma'].includes(labelName(inci, 'EU'));

/** The substances of a composition, whatever their order; empty for none, and where they are not told. */
const substancesKey = (parts: readonly InciPart[]): string =>
  (parts.some(saysWhatItIs) ? parts : [])
    .map(({ inci }) => nameKey(inci))
    .sort()
    .join('\n');

/** Whether what suppliers say of the shares of the same substances can be true of one material. */
function sharesMeet(one: readonly InciPart[], other: readonly InciPart[]): boolean {
  const byName = new Map(other.map((part) => [nameKey(part.inci), part]));
  return one.every(({ inci, lowPpm, highPpm }) => {
    const part = byName.get(nameKey(inci));
    return part !== undefined && part.lowPpm <= highPpm && lowPpm <= part.highPpm;
  });
}

/** Whether two compositions are known, and have no substance in common. */
function areOthers(one: readonly InciPart[], other: readonly InciPart[]): boolean {
  const known = new Set(one.map(({ inci }) => nameKey(inci)));
  return one.length > 0 && other.length > 0 && !other.some(({ inci }) => known.has(nameKey(inci)));
}

/**
 * Whether two trade names are the same or one slip apart. Of materials without a common substance only the very same name
 * counts: Isopropyl Myristate and Isopropyl Palmitate are no slip of each other.
 * @param name the first's, in letters and figures alone
 */
function namesMeet(one: Sketch, name: string, other: Sketch): boolean {
  if (name === '' || figuresOf(one.tradeName) !== figuresOf(other.tradeName)) return false;
  const otherName = bare(other.tradeName);
  return name === otherName || (isNear(name, otherName) && !areOthers(one.composition, other.composition));
}

/** Materials, held ready for finding those that look like another one. */
export class LookAlikes {
  private readonly sketches = new Map<string, Sketch>();
  private readonly byCode = new Map<string, string[]>();
  private readonly bySubstances = new Map<string, string[]>();
  private readonly byNearName = new Map<string, string[]>();

  constructor(all: Iterable<Sketch> = []) {
    for (const one of all) this.add(one);
  }

  add(one: Sketch): void {
    this.sketches.set(one.id, one);
    put(this.byCode, bare(one.code), one.id);
    put(this.bySubstances, substancesKey(one.composition), one.id);
    for (const key of nearKeys(bare(one.tradeName))) put(this.byNearName, key, one.id);
  }

  /** Those that look like a material, whether or not it is among them itself; the surest first. */
  like(one: Sketch): Alike[] {
    const by = new Map<string, Set<Likeness>>();
    const found = (id: string, likeness: Likeness): void => {
      if (id !== one.id) by.set(id, (by.get(id) ?? new Set()).add(likeness));
    };
    const code = bare(one.code);
    if (code !== '') for (const id of this.byCode.get(code) ?? []) found(id, 'code');
    const name = bare(one.tradeName);
    for (const key of nearKeys(name))
      for (const id of this.byNearName.get(key) ?? [])
        if (namesMeet(one, name, this.sketches.get(id)!)) found(id, 'name');
    const substances = substancesKey(one.composition);
    if (substances !== '')
      for (const id of this.bySubstances.get(substances) ?? [])
        if (sharesMeet(one.composition, this.sketches.get(id)!.composition)) found(id, 'substances');
    return [...by]
      .map(([id, likenesses]) => ({ id, by: LIKENESSES.filter((likeness) => likenesses.has(likeness)) }))
      .sort((a, b) => b.by.length - a.by.length || a.id.localeCompare(b.id));
  }

  /** What one of them is called; empty for one that is not among them. */
  nameOf(id: string): string {
    return this.sketches.get(id)?.tradeName ?? '';
  }
}

function put(map: Map<string, string[]>, key: string, id: string): void {
  const held = map.get(key);
  if (held) held.push(id);
  else map.set(key, [id]);
}

/** Holds materials ready for finding, some at each step. */
export function* heldLookAlikes(all: readonly Sketch[]): Generator<void, LookAlikes> {
  const held = new LookAlikes();
  for (const [at, one] of all.entries()) {
    held.add(one);
    if (at % 50 === 49) yield;
  }
  return held;
}

/** Two materials that look alike. */
export interface AlikePair {
  ids: readonly [string, string];
  by: Likeness[];
}

/** Every pair of materials that look alike, the surest first; some materials are looked at at each step. */
export function* alikePairs(all: readonly Sketch[]): Generator<void, AlikePair[]> {
  const held = new LookAlikes();
  const pairs: AlikePair[] = [];
  for (const [at, one] of all.entries()) {
    // Against those before it: each pair is met once.
    for (const { id, by } of held.like(one)) pairs.push({ ids: [id, one.id], by });
    held.add(one);
    if (at % 50 === 49) yield;
  }
  const weight = ({ by }: AlikePair): number =>
    by.reduce((sum, likeness) => sum + (likeness === 'substances' ? 2 : 3), 0);
  return pairs.sort((a, b) => weight(b) - weight(a));
}
