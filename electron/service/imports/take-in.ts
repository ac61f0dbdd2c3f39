import type { Material } from '@core/materials/material';
import { tradeNameKey } from '@core/materials/nested';
import { Problem } from '@core/problems/problem';
import { same } from '@core/record/same';
import type { Reader } from '@db/database';
import { materialRecords, refuseCircularComposition } from '@db/materials/materials';
import { materialUses } from '@db/materials/uses';
import { beginHistory, keepBefore, keepDeleted } from '@db/record/history';
import type { ServiceContext } from '../context';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';
import type { TableImport } from './table-import';

/** More changes than these are told as one: every window asks anew for what it shows. */
const MOST_TOLD = 200;
const { kind } = materialRecords.noun;

function conflict(title: string): Problem {
  return new Problem({
    code: 'conflict',
    title,
    advice: 'Look at what would be taken in once more, then take it in. Nothing was changed.',
  });
}

function presentOf(db: Reader, id: string): Material | undefined {
  return materialRecords.read(db, id);
}

function tellAll(context: ServiceContext, now: readonly { id: string; revision?: number }[]): void {
  const { lists } = context.session.current();
  if (now.length <= MOST_TOLD) for (const one of now) tellChange(context, kind, one);
  else {
    for (const { id } of now) lists.changed('materials', id);
    context.session.changes.tellLibrary();
  }
}

/** Those whose composition names a material of the library: only these can be part of a circle. */
function namingOthers(db: Reader, all: readonly Material[]): Material[] {
  const rows = db.all<{ name: string }>('SELECT trade_name AS name FROM material');
  const names = new Set(rows.map(({ name }) => tradeNameKey(name)));
  return all.filter(({ composition }) => composition.some(({ inci }) => names.has(tradeNameKey(inci))));
}

/** How many materials a table added and changed. */
export interface TakenIn {
  added: number;
  changed: number;
}

/**
 * Writes all that was planned, or nothing, as one change.
 * @throws Problem conflict when a material was changed, or came, since it was planned; invalid-input for a circle
 */
export function takeIn(context: ServiceContext, table: TableImport): TakenIn {
  const { library } = context.session.current();
  if (table.written) throw conflict('This table is taken in already.');
  const came = table.cameSince(library);
  if (came !== null) throw conflict(`“${came}” has come into the library meanwhile.`);
  const doing = doingNow(context, `taken in from ${table.parts.file}`);
  const stamp = { updatedAt: doing.at };
  const added: Material[] = [];
  const changed: { before: Material; after: Material }[] = [];
  for (const { before, content } of table.planned) {
    if (!content) continue;
    if (!before) added.push({ ...content, id: context.newId(), revision: 1, createdAt: doing.at, ...stamp });
    else changed.push({ before, after: { ...before, ...content, revision: before.revision + 1, ...stamp } });
  }
  library.transaction((tx) => {
    for (const one of added) {
      materialRecords.insert(tx, one);
      beginHistory(tx, kind, one.id, doing);
    }
    for (const { before, after } of changed) {
      if (presentOf(tx, before.id)?.revision !== before.revision)
        throw conflict(`“${before.tradeName}” was changed meanwhile.`);
      keepBefore(tx, materialRecords.noun, before, doing);
      materialRecords.update(tx, before, after);
    }
    // Once all stand: a blend may name another material of the same table.
    for (const one of namingOthers(tx, [...added, ...changed.map(({ after }) => after)]))
      refuseCircularComposition(tx, one);
  });
  table.written = {
    added: added.map(({ id }) => id),
    changed: changed.map(({ before, after }) => ({ before, revision: after.revision })),
  };
  tellAll(context, [...added, ...changed.map(({ after }) => after)]);
  return { added: added.length, changed: changed.length };
}

function unchangedSince(db: Reader, id: string, revision: number): Material {
  const now = presentOf(db, id);
  if (now?.revision === revision) return now;
  throw new Problem({
    code: 'conflict',
    title: now
      ? `“${now.tradeName}” was changed after it was taken in.`
      : 'A material that was taken in is no longer there.',
    advice: 'Taking in can be taken back only as a whole. Mend the materials one by one, from their history.',
  });
}

/**
 * Takes back all that a table has written, as one change: what it added goes, what it changed is as before.
 * @throws Problem conflict when one of them was changed since, in-use when one stands in a formula
 */
export function takeBack(context: ServiceContext, table: TableImport): TakenIn {
  const { library } = context.session.current();
  const written = table.written ?? { added: [], changed: [] };
  const doing = doingNow(context, 'taking in taken back');
  const told: { id: string; revision?: number }[] = [];
  library.transaction((tx) => {
    for (const id of written.added) {
      const now = unchangedSince(tx, id, 1);
      const [use] = materialUses(tx, now);
      if (use)
        throw new Problem({
          code: 'in-use',
          title: `“${now.tradeName}” stands in ${use.formulaName} by now.`,
          advice: 'Take it out of the formula first. Nothing was changed.',
        });
      keepDeleted(tx, materialRecords.noun, now, doing);
      materialRecords.remove(tx, id);
      told.push({ id });
    }
    for (const { before, revision } of written.changed) {
      const now = unchangedSince(tx, before.id, revision);
      const after: Material = { ...before, revision: revision + 1, updatedAt: doing.at };
      keepBefore(tx, materialRecords.noun, now, doing);
      if (!same(now, after)) materialRecords.update(tx, now, after);
      told.push(after);
    }
  });
  table.written = null;
  tellAll(context, told);
  return { added: written.added.length, changed: written.changed.length };
}
