import { Draft } from '@renderer/record/draft';
import type { DraftSource, Held } from '@renderer/record/draft-source';
import { ServiceProblem } from '@renderer/service/problem';
import type { ProblemDetails } from '@service/problems/problem-details';
import { RECIPE_SHAPE, type Recipe } from './sample-record';
import { z } from 'zod';

type Code = ProblemDetails['code'];

export function problem(code: Code, ...fields: [path: string, message: string][]): ServiceProblem {
  return new ServiceProblem({
    type: `tag:stillroom,2026:problem/${code}`,
    title: `It is ${code}.`,
    status: code === 'conflict' ? 409 : 422,
    detail: 'Do something about it.',
    code,
    fields: fields.map(([path, message]) => ({ path, message })),
    facts: {},
  });
}

interface Call {
  what: string;
  answer(): void;
}

/**
 * A library of one record, with the rules of the real one: a save from an older state is a conflict, an empty name and
 * a line of more than 100 are refused, and a name is tidied. Every request waits until it is let through.
 */
export class FakeLibrary {
  held: Held<Recipe>;
  /** Every state that was taken in, in order. */
  readonly taken: Recipe[] = [];
  readonly waiting: Call[] = [];
  isGone = false;
  isSilent = false;
  /** Answers at once. */
  isQuick = true;

  constructor(content: Recipe) {
    this.held = { revision: 1, content };
  }

  /** What another window saves. */
  changeElsewhere(change: (recipe: Recipe) => Recipe): void {
    this.held = { revision: this.held.revision + 1, content: change(this.held.content) };
  }

  private refuse(state: Recipe): void {
    const fields: [string, string][] = [];
    if (state.name.trim() === '') fields.push(['content.name', 'Give the name.']);
    state.phases.forEach((phase, at) =>
      phase.lines.forEach((line, index) => {
        if (line.ppm > 100) fields.push([`content.phases.${at}.lines.${index}.ppm`, 'At most 100.']);
      }),
    );
    if (state.tags.length > 2) fields.push(['content.tags.2', 'Two tags at most.']);
    if (fields.length > 0) throw problem('invalid-input', ...fields);
  }

  private answered<T>(what: string, act: () => T): Promise<T> {
    return new Promise((resolve, reject) => {
      const answer = (): void => {
        try {
          if (this.isSilent) throw problem('internal');
          if (this.isGone) throw problem('not-found');
          resolve(act());
        } catch (error) {
          reject(error as Error);
        }
      };
      if (this.isQuick) answer();
      else this.waiting.push({ what, answer });
    });
  }

  /** Lets the request that has waited longest through. */
  next(): void {
    this.waiting.shift()?.answer();
  }

  read(): Promise<Held<Recipe>> {
    return this.answered('read', () => this.held);
  }

  write(state: Recipe, over: Held<Recipe>): Promise<Held<Recipe>> {
    return this.answered('write', () => {
      if (over.revision !== this.held.revision) throw problem('conflict');
      this.refuse(state);
      this.taken.push(state);
      this.held = { revision: this.held.revision + 1, content: { ...state, name: state.name.trim() } };
      return this.held;
    });
  }
}

/** A draft over such a library, and what became of each of its rounds of saving. */
export async function draftOf(library: FakeLibrary) {
  const rounds: ('open' | 'saved' | 'not saved')[] = [];
  const source: DraftSource<Recipe> = {
    kind: 'formula',
    id: '1',
    schema: z.custom<Recipe>(),
    shape: RECIPE_SHAPE,
    nameOf: ({ name }) => name,
    read: () => library.read(),
    write: (state, over) => library.write(state, over),
  };
  const draft = new Draft(source, {
    follow: (whole) => {
      const at = rounds.push('open') - 1;
      whole.then(
        () => (rounds[at] = 'saved'),
        () => (rounds[at] = 'not saved'),
      );
    },
    moved: () => undefined,
  });
  await draft.load();
  return { draft, rounds };
}
