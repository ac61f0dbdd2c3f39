import { blankContent } from '../record/field';
import { merge } from '../record/merge';
import type { Noun } from '../record/noun';
import { same } from '../record/same';
import { preferredSide, type Choice, type FieldSides } from './choice';
import { merging } from './nouns';

type Content = Record<string, unknown>;

export interface ThreeStates {
  /** The last state that both had; null where none is known. */
  base: object | null;
  ours: object;
  theirs: object;
}

export interface Joined {
  content: object;
  /** The keys of the fields in which both sides changed something, each in its own way. */
  clashes: string[];
}

/** A field's key from the place of a clash: a thing of a list belongs to the list's field. */
const keyOfPlace = ({ thing, field }: { thing: string; field: readonly string[] }): string =>
  thing === '' ? String(field[0] ?? '') : (thing.split(/[/#]/)[0] ?? '');

/** What a side leaves out on purpose is as it was: nobody has taken it away. */
export function withWithheld(theirs: object, held: object, withheld: readonly string[]): object {
  const kept = Object.fromEntries(withheld.map((key) => [key, (held as Content)[key]]));
  return { ...theirs, ...kept };
}

/**
 * Puts two states of a record together over their last common one, by field; where none is known, what is blank on one
 * side is taken from the other. Where that makes no record that can be, the parts that do not fit stay as the preferred
 * side has them.
 * @param fields the sides that single fields keep where both changed them, before the preferred one
 */
export function joinStates(
  noun: Noun<object>,
  { base, ours, theirs }: ThreeStates,
  prefer: 'ours' | 'theirs',
  fields: FieldSides = {},
): Joined {
  const { shape, plain, together } = merging(noun.kind);
  const began = base ?? blankContent(noun.fields);
  const [b, o, t] = [began, ours, theirs].map((state) => plain(state as Content)) as [
    Content,
    Content,
    Content,
  ];
  const { state, clashes } = merge(b, o, t, shape, (place) =>
    (fields[keyOfPlace(place)] ?? prefer) === 'ours' ? 'mine' : 'theirs',
  );
  const keys = new Set(clashes.map(({ place }) => keyOfPlace(place)));
  const first = readOrNull(noun, state);
  if (first) return { content: first, clashes: [...keys] };
  const preferred = (prefer === 'ours' ? ours : theirs) as Content;
  const parts = Object.fromEntries(together.map((key) => [key, preferred[key]]));
  for (const key of together) keys.add(key);
  const second = readOrNull(noun, { ...state, ...parts });
  return { content: second ?? noun.read(preferred), clashes: [...keys] };
}

function readOrNull(noun: Noun<object>, state: object): object | null {
  try {
    return noun.read(state);
  } catch {
    return null;
  }
}

/** What a record is once a choice is carried out, and what was said of its fields. */
export function chosenContent(
  noun: Noun<object>,
  states: ThreeStates,
  choice: Choice,
  fields: FieldSides = {},
): object {
  const prefer = preferredSide(choice);
  if (!prefer) return choice === 'leave' ? states.ours : states.theirs;
  const { content } = joinStates(noun, states, prefer, fields);
  return same(content, states.ours) ? states.ours : content;
}
