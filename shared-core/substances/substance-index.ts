import { bracketKeys, colourOfLake, nameKey } from './names';
import type { Substance } from './substance';

/** What must be known of a substance to find it by its names. */
export type NamedSubstance = Pick<
  Substance,
  'id' | 'name' | 'usName' | 'colourIndex' | 'synonyms' | 'groups'
>;

/** The substances of a library by every name they go by. */
export interface SubstanceIndex<S extends NamedSubstance = Substance> {
  readonly all: readonly S[];
  /** The one that a written name means, whichever way it is spelled; null for free text. */
  find(written: string): S | null;
  /** Those that a written name could mean, where it is no one's own: "Iron Oxides" is three. */
  several(written: string): readonly S[];
  /** The members of a group, by its name. */
  members(group: string): readonly S[];
  /** The names of all groups, each once. */
  readonly groups: readonly string[];
}

/** How a name belongs to a substance: its own goes before one that it shares. */
type Claim = 'own' | 'other';

class NameTable<S extends NamedSubstance> implements SubstanceIndex<S> {
  private readonly own = new Map<string, S>();
  private readonly other = new Map<string, S[]>();
  private readonly grouped = new Map<string, S[]>();
  private readonly groupNames = new Map<string, string>();
  private readonly found = new Map<string, S | null>();

  constructor(readonly all: readonly S[]) {
    for (const one of all) {
      this.claim(one, one.name, 'own');
      this.claim(one, one.colourIndex, 'own');
      this.claim(one, one.usName, 'other');
      for (const { name } of one.synonyms) this.claim(one, name, 'other');
      for (const { name } of one.groups) this.join(one, name);
    }
  }

  get groups(): readonly string[] {
    return [...this.groupNames.values()];
  }

  find(written: string): S | null {
    const known = this.found.get(written);
    if (known !== undefined) return known;
    const found = this.read(written);
    this.found.set(written, found);
    return found;
  }

  several(written: string): readonly S[] {
    return this.other.get(nameKey(written)) ?? [];
  }

  members(group: string): readonly S[] {
    return this.grouped.get(nameKey(group)) ?? [];
  }

  private read(written: string): S | null {
    const whole = this.byKey(nameKey(written));
    if (whole) return whole;
    // "Aqua/Water/Eau": several names of one substance, which no chemical name with a slash is.
    const parts = written.split('/');
    const named = parts.length > 1 ? new Set(parts.map((part) => this.byKey(nameKey(part)))) : null;
    const [only] = named ?? [];
    if (named?.size === 1 && only) return only;
    const inBrackets = new Set(bracketKeys(written).flatMap((key) => this.byKey(key) ?? []));
    const [one] = inBrackets;
    return inBrackets.size === 1 && one ? one : null;
  }

  private byKey(key: string): S | null {
    const own = this.own.get(key);
    if (own) return own;
    const others = this.other.get(key) ?? [];
    if (others.length === 1) return others[0] ?? null;
    const colour = colourOfLake(key);
    return colour === null ? null : this.byKey(colour);
  }

  private claim(one: S, written: string, as: Claim): void {
    const key = nameKey(written);
    if (key === '') return;
    if (as === 'own') {
      if (!this.own.has(key)) this.own.set(key, one);
      return;
    }
    const known = this.other.get(key) ?? [];
    if (!known.includes(one)) this.other.set(key, [...known, one]);
  }

  private join(one: S, group: string): void {
    const key = nameKey(group);
    if (key === '') return;
    if (!this.groupNames.has(key)) this.groupNames.set(key, group);
    const known = this.grouped.get(key) ?? [];
    if (!known.includes(one)) this.grouped.set(key, [...known, one]);
  }
}

const KEPT = new WeakMap<readonly NamedSubstance[], SubstanceIndex<NamedSubstance>>();

/** The index of these substances, made once for the same list. */
export function substanceIndex<S extends NamedSubstance>(substances: readonly S[]): SubstanceIndex<S> {
  const known = KEPT.get(substances);
  if (known) return known as unknown as SubstanceIndex<S>;
  const made = new NameTable(substances);
  KEPT.set(substances, made as unknown as SubstanceIndex<NamedSubstance>);
  return made;
}
