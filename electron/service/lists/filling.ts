import { setImmediate } from 'node:timers/promises';
import { fillListIndex, type ListIndex } from '@core/lists/list-index';
import { otherNames } from '@core/materials/synonyms';
import type { Reader } from '@db/database';
import { NOUN_LISTS, type Noun, type Nouns } from './nouns';

/** So many records are read and taken in at once: a few milliseconds. */
const AT_ONCE = 50;
/** After so long, in ms, whatever else has come in is answered before filling goes on. */
const PIECE_MS = 15;

export interface FillingParts<N extends Noun> {
  db: Reader;
  noun: N;
  /** Adds what other lists know of the entries. */
  complete(entries: Nouns[N]['entry'][]): Nouns[N]['entry'][];
  /** Whether the list is of no more use: the library is being closed. */
  isOver(): boolean;
}

/** Fills a noun's list piece by piece, so that the process answers in between; undefined when it was over before. */
export async function fillList<N extends Noun>({
  db,
  noun,
  complete,
  isOver,
}: FillingParts<N>): Promise<ListIndex<Nouns[N]['entry']> | undefined> {
  if (isOver()) return undefined;
  const { description, read, table } = NOUN_LISTS[noun];
  const filling = fillListIndex<Nouns[N]['entry']>(description, otherNames);
  const ids = db.all<{ id: string }>(`SELECT id FROM ${table.from}`).map(({ id }) => id);
  let began = performance.now();
  /** Gives others their turn when it is time. Answers whether to go on. */
  const goOn = async (): Promise<boolean> => {
    if (performance.now() - began < PIECE_MS) return true;
    await setImmediate();
    began = performance.now();
    return !isOver();
  };
  for (let at = 0; at < ids.length; at += AT_ONCE) {
    filling.take(complete(read(db, ids.slice(at, at + AT_ONCE))));
    if (!(await goOn())) return undefined;
  }
  const steps = filling.finish();
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    if (!(await goOn())) return undefined;
  }
}
