import { joinedMaterial, renamedParts, withOtherMaterial } from '@core/lookalikes/joined';
import type { Material } from '@core/materials/material';
import { Problem } from '@core/problems/problem';
import type { Writer } from '@db/database';
import { formulaRecords } from '@db/formulas/drafts';
import { formulasWith } from '@db/formulas/list';
import { materialRecords, refuseCircularComposition } from '@db/materials/materials';
import { holdersOf } from '@db/materials/nested';
import { keepDeleted, keepLeft, beginHistory, type Doing } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import type { AnyRepository } from '@db/repositories';
import { seriesRecords } from '@db/trials/trials';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';

/** What joining has written, so that it can be taken back as one. */
export interface JoinWritten {
  changed: { repository: AnyRepository; before: Kept; revision: number }[];
  removed: Material[];
}

export interface JoinDone {
  /** Records in which the one material now stands in the place of the other. */
  moved: number;
  /** Stays, put away, since recorded versions or batches were made of it; null where it went. */
  archived: string | null;
}

/** One change after another within a transaction, remembered. */
class Joining {
  readonly written: JoinWritten = { changed: [], removed: [] };

  constructor(
    private readonly tx: Writer,
    private readonly doing: Doing,
  ) {}

  change(repository: AnyRepository, before: Kept, content: object): void {
    const after = { ...before, ...content, revision: before.revision + 1, updatedAt: this.doing.at } as Kept;
    keepLeft(this.tx, repository.noun, before);
    repository.update(this.tx, before, after);
    beginHistory(this.tx, repository.noun.kind, before.id, this.doing);
    this.written.changed.push({ repository, before, revision: after.revision });
  }

  remove(material: Material): void {
    keepDeleted(this.tx, materialRecords.noun, material, this.doing);
    materialRecords.remove(this.tx, material.id);
    this.written.removed.push(material);
  }
}

function isFrozen(tx: Writer, id: string): boolean {
  return (
    tx.get(
      `SELECT 1 AS found FROM state s JOIN formula_version_state v ON v.state = s.id WHERE s.record = ?
       UNION SELECT 1 FROM batch_line WHERE material_id = ? LIMIT 1`,
      ...[id, id],
    ) !== undefined
  );
}

function seriesWith(tx: Writer, id: string): string[] {
  const rows = tx.all<{ id: string }>('SELECT id FROM trial_series WHERE instr(content, ?) > 0', id);
  return rows.map((row) => row.id);
}

/** Blends that name the material by its trade name. */
function blendsWith(tx: Writer, { id, tradeName }: Material): string[] {
  return holdersOf(tx, [tradeName])
    .map((holder) => holder.id)
    .filter((holder) => holder !== id);
}

function join(
  tx: Writer,
  doing: Doing,
  keep: Material,
  other: Material,
): { done: JoinDone; written: JoinWritten } {
  const joining = new Joining(tx, doing);
  const ofFormulas = formulaRecords as unknown as AnyRepository;
  const ofSeries = seriesRecords as unknown as AnyRepository;
  const ofMaterials = materialRecords as unknown as AnyRepository;
  for (const [repository, ids] of [
    [ofFormulas, formulasWith(tx, other.id)],
    [ofSeries, seriesWith(tx, other.id)],
  ] as const)
    for (const id of ids) {
      const before = repository.read(tx, id);
      if (before) joining.change(repository, before, withOtherMaterial(before, other.id, keep.id));
    }
  for (const id of blendsWith(tx, other)) {
    const before = materialRecords.read(tx, id);
    if (!before || id === keep.id) continue;
    const composition = renamedParts(before.composition, other.tradeName, keep.tradeName);
    joining.change(ofMaterials, before, materialRecords.noun.read({ ...before, composition }));
  }
  const moved = joining.written.changed.length;
  const frozen = isFrozen(tx, other.id);
  if (frozen) joining.change(ofMaterials, other, { status: 'archived', notes: joinedInto(other, keep) });
  else joining.remove(other);
  const content = joinedMaterial(materialRecords.noun.read(keep), materialRecords.noun.read(other));
  joining.change(ofMaterials, keep, content);
  const after = materialRecords.read(tx, keep.id);
  if (after) refuseCircularComposition(tx, after);
  return { done: { moved, archived: frozen ? other.tradeName : null }, written: joining.written };
}

function joinedInto({ notes }: Material, { tradeName }: Material): string {
  return [notes, `Joined into “${tradeName}”.`].filter(Boolean).join('\n');
}

/** Tells every window of what was written. */
function tellAll(context: ServiceContext, { changed, removed }: JoinWritten): void {
  for (const { repository, before, revision } of changed)
    tellChange(context, repository.noun.kind, { id: before.id, revision });
  for (const { id } of removed) tellChange(context, materialRecords.noun.kind, { id });
}

/**
 * Joins one material with another, as one change: all uses move, what the kept one does not say comes from the other,
 * and the other goes, or is put away where versions or batches were made of it. Its history stays.
 * @throws Problem not-found, conflict when one was changed since it was shown, invalid-input for a circle of blends
 */
export function joinMaterials(
  context: ServiceContext,
  keepId: string,
  otherId: string,
): { done: JoinDone; written: JoinWritten } {
  const { library } = context.session.current();
  const keep = found(materialRecords.read(library, keepId), 'raw material');
  const other = found(materialRecords.read(library, otherId), 'raw material');
  if (keepId === otherId)
    throw new Problem({
      code: 'invalid-input',
      title: 'A material cannot be joined with itself.',
      advice: 'Choose two different ones.',
    });
  const doing = doingNow(context, `joined with ${other.tradeName}`.slice(0, 200));
  const joined = library.transaction((tx) => join(tx, doing, keep, other));
  tellAll(context, joined.written);
  return joined;
}

/** Takes a join back, as one change. @throws Problem conflict when something of it was changed since */
export function takeJoinBack(context: ServiceContext, { changed, removed }: JoinWritten): void {
  const { library } = context.session.current();
  const doing = doingNow(context, 'joining undone');
  const told: JoinWritten = { changed: [], removed: [] };
  library.transaction((tx) => {
    for (const material of removed) {
      materialRecords.insert(tx, { ...material, revision: 1, updatedAt: doing.at });
      beginHistory(tx, materialRecords.noun.kind, material.id, doing);
      told.changed.push({
        repository: materialRecords as unknown as AnyRepository,
        before: material,
        revision: 1,
      });
    }
    for (const { repository, before, revision } of [...changed].reverse()) {
      const now = repository.read(tx, before.id);
      if (now?.revision !== revision)
        throw new Problem({
          code: 'conflict',
          title: `“${repository.noun.titleOf(before)}” was changed after the two were joined.`,
          advice: 'Joining can be undone only as a whole. Correct single records from their history.',
        });
      const after = { ...before, revision: revision + 1, updatedAt: doing.at };
      keepLeft(tx, repository.noun, now);
      repository.update(tx, now, after);
      beginHistory(tx, repository.noun.kind, before.id, doing);
      told.changed.push({ repository, before, revision: after.revision });
    }
  });
  tellAll(context, told);
}
