import { covers, placeKey, placeOfPath, RECORD, valueAt, widened, type Place } from '@core/record/place';
import { same } from '@core/record/same';
import { computed, shallowRef } from 'vue';
import type { ProblemDetails } from '../service/problem';
import type { DraftSource } from './draft-source';

type FieldProblem = ProblemDetails['fields'][number];

interface Refusal {
  place: Place;
  /** What was refused: once it is another, it goes out again. */
  value: unknown;
  fields: FieldProblem[];
}

const CONTENT = 'content.';

function faultAt(refused: readonly Refusal[], path: string, wanted: Place): string | null {
  const here = ({ place, fields }: Refusal): FieldProblem | undefined =>
    fields.find((field) => field.path === path || field.path === CONTENT + path) ??
    // A thing is found again wherever it was moved.
    (wanted.thing !== '' && placeKey(place) === placeKey(wanted) ? fields[0] : undefined);
  return refused.map(here).find((field) => field !== undefined)?.message ?? null;
}

function messagesUnder(fields: readonly FieldProblem[], path: string): string[] {
  const isWithin = (one: string): boolean => one === CONTENT + path || one.startsWith(`${CONTENT}${path}.`);
  return fields.filter((field) => isWithin(field.path)).map(({ message }) => message);
}

/** What the service refused of a record: it stays on screen with its reason, and holds up nothing else. */
export function refusals<T extends object>(source: Pick<DraftSource<T>, 'shape' | 'placeOfFault'>) {
  const { shape } = source;
  const all = shallowRef<Refusal[]>([]);
  const last = shallowRef<ProblemDetails | null>(null);

  function placeOf(path: string, state: T): Place {
    if (path.startsWith(CONTENT)) return placeOfPath(state, path.slice(CONTENT.length).split('.'), shape);
    return source.placeOfFault?.(path, state) ?? RECORD;
  }

  /** The place, or the next around it that is not held back yet: then the fault is of more than the field. */
  function notYetHeld(place: Place): Place | null {
    let here: Place | null = place;
    while (here && all.value.some((one) => covers(one.place, [here as Place]))) here = widened(here);
    return here;
  }

  /** Holds back what a refusal is about. False when that is not some part of the record, but all of it. */
  function hold(details: ProblemDetails, sent: T, content: T): boolean {
    const added: Refusal[] = [];
    for (const field of details.fields) {
      const place = notYetHeld(placeOf(field.path, sent));
      if (!place || placeKey(place) === placeKey(RECORD)) return false;
      const known = added.find((one) => placeKey(one.place) === placeKey(place));
      if (known) known.fields.push(field);
      else added.push({ place, value: valueAt(content, place, shape), fields: [field] });
    }
    if (added.length === 0) return false;
    // What was held back too narrowly is now part of what is around it.
    const within = (one: Refusal): boolean => added.some(({ place }) => covers(place, [one.place]));
    all.value = [...all.value.filter((one) => !within(one)), ...added];
    last.value = details;
    return true;
  }

  /** Lets go what is another by now, or is in the library. */
  function review(content: T, inLibrary: T): void {
    const left = all.value.filter(({ place, value }) => {
      const now = valueAt(content, place, shape);
      return same(now, value) && !same(now, valueAt(inLibrary, place, shape));
    });
    if (left.length !== all.value.length) all.value = left;
  }

  return {
    hold,
    review,
    /** What the service said is wrong at a path of the content, such as `name` or `phases.0.lines.2.ppm`. */
    at: (path: string, content: T) => faultAt(all.value, path, placeOf(CONTENT + path, content)),
    /** What is wrong anywhere below a path, for lists that show it together. */
    under: (path: string) => all.value.flatMap(({ fields }) => messagesUnder(fields, path)),
    places: () => all.value.map(({ place }) => place),
    clear: () => void (all.value = []),
    /** All that is refused, as one. */
    problem: computed<ProblemDetails | null>(() =>
      all.value.length > 0 && last.value
        ? { ...last.value, fields: all.value.flatMap(({ fields }) => fields) }
        : null,
    ),
  };
}
