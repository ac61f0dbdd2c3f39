import { Problem } from '../problems/problem';
import { fillBlanks, textWithoutBlanks } from './blanks';
import type { Fields } from './field';

/** Lifts a state written by one format to the next; the content comes as JSON. */
export type Upgrader = (content: Record<string, unknown>) => Record<string, unknown>;

/** A kind of record: what it is called, what it holds, and how states written by earlier formats are read. */
export interface Noun<C extends object> {
  /** Stored with every state; never changes. */
  kind: string;
  /** What a maker calls one. */
  name: string;
  fields: Fields;
  /** Reads content: also what a library took in before a rule was made. Throws a ZodError. */
  read(content: unknown): C;
  /** What the one that holds this is called. */
  titleOf(content: C): string;
  /** Whether recorded versions are judged by it: what stood when one was recorded is then kept, also within a sitting. */
  judgesVersions?: boolean;
  /** From format 1 to 2, from 2 to 3 …; today's format is one more than there are. */
  upgraders: readonly Upgrader[];
}

/** The number of the format in which states of a noun are written today. */
export function formatOf({ upgraders }: Pick<Noun<never>, 'upgraders'>): number {
  return upgraders.length + 1;
}

/**
 * The content of a state as it is kept: what is blank is left out, so that a field added later changes no state
 * that was kept before it.
 */
export function keptText(fields: Fields, content: object): string {
  return textWithoutBlanks(fields, content as Record<string, unknown>);
}

/**
 * Reads a kept state of any format up to today's.
 * @throws Problem library-newer for a format from the future, library-damaged for one that cannot be lifted or read
 */
export function liftState<C extends object>(noun: Noun<C>, format: number, text: string): C {
  const today = formatOf(noun);
  if (format > today)
    throw new Problem({
      code: 'library-newer',
      title: `This ${noun.name} was kept by a newer version of Stillroom.`,
      advice: 'Open the library with that version or a later one. Nothing was changed.',
      facts: { kind: noun.kind, format, known: today },
    });
  try {
    const kept = JSON.parse(text) as Record<string, unknown>;
    const lifted = noun.upgraders.slice(format - 1).reduce((content, upgrade) => upgrade(content), kept);
    return noun.read(fillBlanks(noun.fields, lifted));
  } catch (cause) {
    throw unreadableState(noun.name, { kind: noun.kind, format }, cause);
  }
}

/** What to say of a kept state that is not what was kept. */
export function unreadableState(name: string, facts: Record<string, unknown>, cause?: unknown): Problem {
  return new Problem(
    {
      code: 'library-damaged',
      title: `An earlier state of this ${name} cannot be read.`,
      advice:
        'The present one is not touched by this. Look in a backup for the earlier state; nothing was changed.',
      facts,
    },
    { cause },
  );
}
