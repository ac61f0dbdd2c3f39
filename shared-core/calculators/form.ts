import { z } from 'zod';
import type { TermKey } from '../glossary/glossary';
import { lineText } from '../quantities/text';
import { badInput, finite } from '../working/inputs';
import { show } from '../working/show';
import { entered, type Answer } from './calculated';

/** One figure, word or choice that a form asks for. */
export interface FormField {
  key: string;
  label: string;
  unit?: string;
  /** The choice of the form that says its unit, where a maker may weigh or measure. */
  unitFrom?: string;
  min?: number;
  max?: number;
  hint?: string;
  /** The word of its label that the glossary explains. */
  term?: TermKey;
  /** May stay empty. */
  optional?: boolean;
  /** What stands in the field at first, in sight; it counts as long as it stands there. */
  start?: number | string;
  /** Makes it a choice: what each is called, by its key. */
  choices?: Readonly<Record<string, string>>;
  /** Makes it words instead of a number. */
  words?: boolean;
}

/** A line to start from, such as a published viscosity. */
export interface Preset {
  label: string;
  row: FormRow;
}

/** Lines of a form, as many as there are. */
export interface FormLines {
  /** "oil", for "Add an oil" and "oil 1". */
  one: string;
  caption: string;
  columns: readonly FormField[];
  /** Published lines to take over. */
  presets?: readonly Preset[];
  presetLabel?: string;
  /** Which column takes a library material's name, and which take its figures. */
  library?: { name: string; figures: Readonly<Record<string, 'density' | 'molarMass' | 'pKa'>> };
  /** The column that takes a line's per cent when the lines of a formula are taken over. */
  share?: string;
}

export interface Form {
  name: string;
  /** What it answers, in a sentence. */
  asks: string;
  fields: readonly FormField[];
  lines?: FormLines;
  compute: (of: Entries) => Answer;
}

export const entry = z.union([z.number('Enter a number.'), lineText(300), z.null()]);
export type FormEntry = z.infer<typeof entry>;
export const formRow = z.record(z.string().max(40), entry);
export type FormRow = z.infer<typeof formRow>;

/** What a field holds: what was entered, or its start while nothing was. Null for a field that was emptied. */
export function entryOf(field: FormField, values: FormRow): FormEntry {
  const held = values[field.key];
  return held === undefined ? (field.start ?? null) : held;
}

/** A field with the unit that it has now: its own, or the one that is chosen beside it. */
export function withUnit(field: FormField, fields: readonly FormField[], values: FormRow): FormField {
  const chooses = fields.find(({ key }) => key === field.unitFrom);
  const chosen = chooses && entryOf(chooses, values);
  return typeof chosen === 'string' ? { ...field, unit: chooses?.choices?.[chosen] ?? chosen } : field;
}

/** A form's entries as its computing reads them; what is missing is asked for. */
export class Entries {
  constructor(
    private readonly fields: readonly FormField[],
    private readonly values: FormRow,
    private readonly lines: FormLines | undefined,
    private readonly linesHeld: readonly FormRow[],
    private readonly place: { words: string; path: string } = { words: '', path: '' },
  ) {}

  /** @throws Problem `invalid-input` when it is not entered */
  number(key: string): number {
    return entered(this.optional(key), this.named(key), this.path(key));
  }

  /** Null while it is not entered. @throws Problem `invalid-input` beyond the field's bounds */
  optional(key: string): number | null {
    const held = entryOf(this.field(key), this.values);
    return typeof held === 'number' ? this.within(key, held) : null;
  }

  /** The chosen key of a choice. */
  choice(key: string): string {
    const field = this.field(key);
    const held = entryOf(field, this.values);
    const known = Object.keys(field.choices ?? {});
    if (typeof held !== 'string' || !known.includes(held))
      throw badInput(`${this.named(key)} is not chosen yet.`, 'Choose one.', this.path(key), {
        missing: true,
      });
    return held;
  }

  /** Empty when nothing was written. */
  words(key: string): string {
    const held = entryOf(this.field(key), this.values);
    return typeof held === 'string' ? held.trim() : '';
  }

  /** The lines, in order. @throws Problem `invalid-input` when there is none */
  rows(): Entries[] {
    const { lines } = this;
    if (!lines || this.linesHeld.length === 0)
      throw badInput(`There is no ${lines?.one ?? 'line'} yet.`, 'Add one.', 'rows', { missing: true });
    return this.linesHeld.map(
      (row, index) =>
        new Entries(lines.columns, row, undefined, [], {
          words: ` of ${lines.one} ${index + 1}`,
          path: `rows.${index}.`,
        }),
    );
  }

  /** A figure that the field may hold: a request is held to the bounds that the screen shows, whoever makes it. */
  private within(key: string, value: number): number {
    const { min = -Infinity, max = Infinity, unit = '' } = this.field(key);
    finite(value, this.named(key));
    if (value >= min && value <= max) return value;
    const tail = unit && ` ${unit}`;
    const both = Number.isFinite(min) && Number.isFinite(max);
    const asked = both
      ? `lie between ${show(min)} and ${show(max)}${tail}`
      : value < min
        ? `be ${show(min)}${tail} or more`
        : `be ${show(max)}${tail} or less`;
    throw badInput(
      `${this.named(key)} is ${show(value)}${tail}; it must ${asked}.`,
      'Check the number and its unit.',
      this.path(key),
    );
  }

  private named(key: string): string {
    return `${this.field(key).label}${this.place.words}`;
  }

  private path(key: string): string {
    return this.place.path + key;
  }

  private field(key: string): FormField {
    const found = this.fields.find((field) => field.key === key);
    if (!found) throw new Error(`The form has no field “${key}”.`);
    return found;
  }
}
