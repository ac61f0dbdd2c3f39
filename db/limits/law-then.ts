import type { LawThen } from '@core/limits/law-then';
import type { Limit, LimitContent } from '@core/limits/limit';
import type { Substance, SubstanceContent } from '@core/substances/substance';
import type { Reader } from '../database';
import { deletedRecords, readEntry, readHistory } from '../record/history';
import type { Kept } from '../record/record-table';
import type { Repository } from '../record/repository';
import { substanceRecords } from '../substances/substances';
import { limitRecords } from './limits';

interface Then<R> {
  was: R[];
  since: string[];
}

/** The state in which a record stood at a moment: the newest not younger than that; in their order, not by their clocks. */
function stateThen<R extends Kept & C, C extends object>(
  db: Reader,
  { noun }: Repository<R, C>,
  record: string,
  at: string,
  /** Whether it is known to have stood then, whatever states were kept. */
  stood: boolean,
): R | null {
  const entries = readHistory(db, noun.kind, record);
  const then = entries.findLast((entry) => entry.at <= at);
  // What was never left in a state of that age stood in one near to the first that it was left in.
  const nearest = then ?? (stood ? entries[0] : undefined);
  const content = nearest && readEntry(db, noun, record, nearest.n);
  if (!nearest || !content) return null;
  return {
    ...content,
    id: record,
    revision: 1,
    createdAt: nearest.at,
    updatedAt: nearest.at,
  } as unknown as R;
}

function otherwise<R extends Kept & C, C extends object>(
  db: Reader,
  table: string,
  repository: Repository<R, C>,
  at: string,
): Then<R> {
  const changed = db.all<{ id: string; came: string }>(
    `SELECT id, created_at AS came FROM ${table} WHERE updated_at > ?`,
    at,
  );
  const present = changed.map(({ id, came }) => ({
    id,
    then: stateThen(db, repository, id, at, came <= at),
  }));
  const deleted = deletedRecords(db, repository.noun.kind)
    .filter((one) => one.at > at)
    .map(({ record }) => stateThen(db, repository, record, at, false));
  return {
    was: [...present.map(({ then }) => then), ...deleted].filter((one) => one !== null),
    since: present.filter(({ then }) => then === null).map(({ id }) => id),
  };
}

/**
 * What of the library's limits and substances was otherwise at a moment.
 * @param at ISO 8601
 * @throws Problem library-damaged where a kept state cannot be read
 */
export function lawThen(db: Reader, at: string): LawThen {
  const substances = otherwise<Substance, SubstanceContent>(db, 'substance', substanceRecords, at);
  const limits = otherwise<Limit, LimitContent>(db, 'legal_limit', limitRecords, at);
  return {
    was: { substances: substances.was, limits: limits.was },
    since: [...substances.since, ...limits.since],
  };
}
