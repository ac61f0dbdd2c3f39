import { z } from 'zod';
import type { Region } from '../locale/numbers';
import { WHOLE_PPM, sharePpm } from '../quantities/share';
import { lineText, longText, nameText } from '../quantities/text';
import type { TableColumn } from './table-column';

/** A column of the noun's list. */
export interface ListColumn {
  /** Shorter than the label, where a column has no room for it. */
  title?: string;
  /** The narrowest it gets, in rem, and how much of the room to spare it takes. */
  rem: number;
  grow?: number;
}

/** Where a field shows. What a noun draws by hand it says with `by hand`: it is then not drawn a second time. */
export interface Places {
  form: 'derived' | 'by hand';
  /** `no` for what is no business of the paper, such as the list of attached files' hashes. */
  sheet: 'derived' | 'by hand' | 'no';
  compare: 'derived' | 'by hand' | 'no';
  list?: ListColumn;
  /** The list is narrowed down by its words, under this title: those of the vocabulary, or those found in the library. */
  filter?: string;
  /** Its text is searched. */
  search?: boolean;
}

/** What a field holds, and so how it is stored, entered and told. */
export type Shape =
  | { kind: 'line'; max: number }
  | { kind: 'text' | 'attachment' }
  | { kind: 'word'; words: readonly string[]; names?: Readonly<Record<string, string>>; empty: string | null }
  | { kind: 'words'; words: readonly string[] }
  | { kind: 'flag' | 'known' }
  | { kind: 'number' | 'whole' | 'share'; unit: string; digits: number; min: number; max: number }
  | { kind: 'group'; fields: Fields; nullable: boolean }
  | { kind: 'rows'; row: Fields }
  | { kind: 'figures' };

/** One property of a noun, described once: reading, writing, showing and comparing are derived from this. */
export interface Field<S extends z.ZodType = z.ZodType> {
  /** What it is called, on screen and paper. */
  label: string;
  /** The part of the form and the sheet that it belongs to. */
  section: string;
  shape: Shape;
  /** What a library may hold: also what it took in before a rule was made. */
  stored: S;
  /** What a maker may enter. */
  entered: z.ZodType<z.output<S>>;
  /** Nothing known. A state leaves it out, so that a field added later changes no state that was kept. */
  blank: z.output<S>;
  /** Where its name in the library's tables is not its key's. */
  column?: string;
  hint?: string;
  placeholder?: string;
  places: Places;
  /** The value in words, where its kind alone does not say it well. Empty for nothing to tell. */
  tell?(value: z.output<S>, region: Region): string;
  /** Its columns in a table that is saved, where its kind alone does not say them well; none keeps it out of tables. */
  columns?: readonly TableColumn<z.output<S>>[];
}
export type Fields = Readonly<Record<string, Field>>;

/** What a noun with these fields holds. */
export type ContentOf<F extends Fields> = { -readonly [K in keyof F]: z.output<F[K]['stored']> };

type Spec<S extends z.ZodType> = Partial<Omit<Field<S>, 'shape' | 'stored' | 'places'>> & {
  label: string;
  section: string;
  places?: Partial<Places>;
};

function field<S extends z.ZodType>(
  shape: Shape,
  stored: S,
  blank: z.output<S>,
  { places, ...spec }: Spec<S>,
): Field<S> {
  return {
    entered: stored as z.ZodType<z.output<S>>,
    blank,
    ...spec,
    shape,
    stored,
    places: { form: 'derived', sheet: 'derived', compare: 'derived', ...places },
  };
}

/** One line of text; empty when nothing is known. */
export function line(spec: Spec<ReturnType<typeof lineText>> & { max?: number }) {
  const { max = 200, ...rest } = spec;
  return field({ kind: 'line', max }, lineText(max), '', rest);
}

/** A name that must be given, of which a library may hold an empty one from before that rule. */
export function name(what: string, spec: Spec<ReturnType<typeof lineText>> & { max?: number }) {
  const { max = 200, ...rest } = spec;
  return field({ kind: 'line', max }, lineText(max), '', { entered: nameText(what, max), ...rest });
}

/** Text of several lines. */
export function text(spec: Spec<ReturnType<typeof longText>> & { max?: number }) {
  const { max, ...rest } = spec;
  return field({ kind: 'text' }, longText(max), '', rest);
}

interface Naming {
  names?: Readonly<Record<string, string>>;
}

/** One word of a vocabulary, or null when it is not known. @param empty what not knowing is called */
export function wordOrNone<const W extends readonly [string, ...string[]]>(
  words: W,
  empty: string,
  spec: Spec<z.ZodNullable<z.ZodEnum<z.core.util.ToEnum<W[number]>>>> & Naming,
) {
  const { names, ...rest } = spec;
  return field({ kind: 'word', words, names, empty }, z.enum(words).nullable(), null, rest);
}

/** One word of a vocabulary, which is always known. @param first the word at the beginning */
export function word<const W extends readonly [string, ...string[]]>(
  words: W,
  first: W[number],
  spec: Spec<z.ZodEnum<z.core.util.ToEnum<W[number]>>> & Naming,
) {
  const { names, ...rest } = spec;
  return field({ kind: 'word', words, names, empty: null }, z.enum(words), first as never, rest);
}

/** Any number of words of a vocabulary. */
export function words<const W extends readonly [string, ...string[]]>(
  all: W,
  spec: Spec<z.ZodArray<z.ZodEnum<z.core.util.ToEnum<W[number]>>>>,
) {
  return field({ kind: 'words', words: all }, z.array(z.enum(all)).max(all.length), [], spec);
}

/** Any number of identifiers of other things. */
export function references<S extends z.ZodType<string[]>>(stored: S, spec: Spec<S>) {
  return field({ kind: 'words', words: [] }, stored, [] as unknown as z.output<S>, spec);
}

/** Yes or no. */
export function flag(spec: Spec<z.ZodBoolean>) {
  return field({ kind: 'flag' }, z.boolean(), false, spec);
}

/** Yes, no, or not known. */
export function yesOrNo(spec: Spec<z.ZodNullable<z.ZodBoolean>>) {
  return field({ kind: 'known' }, z.boolean().nullable(), null, spec);
}

interface NumberSpec {
  unit?: string;
  /** Most decimals. */
  digits?: number;
  min: number;
  max: number;
}

/** A number with its unit, or null. @param stored its rule, with the sentences that tell a maker what is wrong */
export function number<S extends z.ZodType<number | null>>(
  stored: S,
  spec: Spec<S> & NumberSpec & { whole?: boolean },
) {
  const { unit = '', digits = 3, min, max, whole, ...rest } = spec;
  const shape: Shape = { kind: whole ? 'whole' : 'number', unit, digits: whole ? 0 : digits, min, max };
  return field(shape, stored, null as z.output<S>, rest);
}

/** A share of a whole in ppm, entered and told in per cent; null when it is not known. */
export function shareOrNone(spec: Spec<z.ZodNullable<typeof sharePpm>>) {
  return field(SHARE, sharePpm.nullable(), null, spec);
}

/** A share that is always there. */
export function share(spec: Spec<typeof sharePpm>) {
  return field(SHARE, sharePpm, WHOLE_PPM, spec);
}
const SHARE: Shape = { kind: 'share', unit: '%', digits: 4, min: 0, max: 100 };

/** An attached file's SHA-256, or null. */
export function attachment<S extends z.ZodType<string | null>>(stored: S, spec: Spec<S>) {
  return field({ kind: 'attachment' }, stored, null as z.output<S>, spec);
}

/** Fields that belong together, stored beside the others. */
export function group<S extends z.ZodType>(fields: Fields, stored: S, blank: z.output<S>, spec: Spec<S>) {
  return field({ kind: 'group', fields, nullable: blank === null }, stored, blank, spec);
}

/** A list whose rows have fields of their own, stored in a table of its own. */
export function rows<S extends z.ZodType<unknown[]>>(row: Fields, stored: S, spec: Spec<S>) {
  return field({ kind: 'rows', row }, stored, [] as z.output<S>, spec);
}

/** The noun's figures, each with its spread, how it is known and its source. */
export function figuresField<S extends z.ZodType>(stored: S, spec: Spec<S>) {
  return field({ kind: 'figures' }, stored, {} as z.output<S>, spec);
}

type Shaped<F extends Fields> = z.ZodObject<{ -readonly [K in keyof F]: F[K]['stored'] }>;

/** All that a library may hold of a noun. */
export function storedShape<F extends Fields>(fields: F): Shaped<F> {
  return z.object(
    Object.fromEntries(Object.entries(fields).map(([key, one]) => [key, one.stored])),
  ) as unknown as Shaped<F>;
}

/** All that a maker may enter of a noun. */
export function enteredShape<F extends Fields>(fields: F): Shaped<F> {
  return z.object(
    Object.fromEntries(Object.entries(fields).map(([key, one]) => [key, one.entered])),
  ) as unknown as Shaped<F>;
}

/** Put together once for each noun: a table of thousands begins as many. */
const BLANKS = new WeakMap<Fields, object>();

/** A noun of which nothing is known yet. */
export function blankContent<F extends Fields>(fields: F): ContentOf<F> {
  const known = BLANKS.get(fields);
  const blank = known ?? Object.fromEntries(Object.entries(fields).map(([key, one]) => [key, one.blank]));
  if (!known) BLANKS.set(fields, blank);
  return { ...blank } as ContentOf<F>;
}
