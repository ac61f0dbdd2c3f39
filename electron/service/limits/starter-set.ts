import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import type { Limit } from '@core/limits/limit';
import { LIMIT } from '@core/limits/noun';
import { nameKey } from '@core/substances/names';
import { SUBSTANCE } from '@core/substances/noun';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { limitRecords, readLimits } from '@db/limits/limits';
import { readSubstances, substanceRecords } from '@db/substances/substances';
import type { Writer } from '@db/database';
import { beginHistory } from '@db/record/history';
import type { ServiceContext } from '../context';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';
import { limitKey } from '@core/limits/limit-key';

/** The examples that are not in a library yet, under new ids. */
export function missingExamples(library: Parameters<typeof readLimits>[0], newId: () => string, at: string) {
  const kept = { revision: 1, createdAt: at, updatedAt: at };
  const names = new Set(readSubstances(library).map(({ name }) => nameKey(name)));
  const known = new Set(readLimits(library).map(limitKey));
  return {
    substances: starterSubstances()
      .filter(({ name }) => !names.has(nameKey(name)))
      .map((content) => ({ ...content, ...kept, id: newId() })),
    limits: STARTER_LIMITS.filter((content) => !known.has(limitKey(content))).map((content): Limit => ({
      ...content,
      ...kept,
      id: newId(),
    })),
  };
}

/** Writes examples into a library. */
export function writeExamples(tx: Writer, { substances, limits }: ReturnType<typeof missingExamples>): void {
  for (const added of substances) substanceRecords.insert(tx, added);
  for (const added of limits) limitRecords.insert(tx, added);
}

/** Adds the examples that the library has not yet, as one change; what a maker recorded or changed stays as it is. */
export function addStarterSet(context: ServiceContext): { substances: number; limits: number } {
  const { library } = context.session.current();
  const doing = doingNow(context, 'from the starter set');
  const missing = missingExamples(library, () => context.newId(), doing.at);
  library.transaction((tx) => {
    writeExamples(tx, missing);
    for (const { id } of missing.substances) beginHistory(tx, SUBSTANCE.kind, id, doing);
    for (const { id } of missing.limits) beginHistory(tx, LIMIT.kind, id, doing);
  });
  const { lists } = context.session.current();
  for (const { id } of missing.substances) lists.changed('substances', id);
  for (const { id } of missing.limits) lists.changed('limits', id);
  // Told once a kind, not some hundreds of times: every screen that shows one asks for all of them anew.
  for (const added of missing.substances.slice(0, 1)) tellChange(context, SUBSTANCE.kind, added);
  for (const added of missing.limits.slice(0, 1)) tellChange(context, LIMIT.kind, added);
  return { substances: missing.substances.length, limits: missing.limits.length };
}
