import { plain } from '@core/imports/plain';
import { planRow, type PlannedRow } from '@core/imports/plan-row';
import { keyOf } from '@core/imports/read-rows';
import { joined } from '@core/locale/words';
import { heldLookAlikes, LIKENESS_WORDS, type LookAlikes } from '@core/lookalikes/look-alikes';
import type { Material, MaterialContent } from '@core/materials/material';
import { tradeNameKey } from '@core/materials/nested';
import { Problem } from '@core/problems/problem';
import type { Reader } from '@db/database';
import { readSketches } from '@db/lookalikes/sketches';
import { materialRecords, materials, refuseCircularComposition } from '@db/materials/materials';
import { materialUses } from '@db/materials/uses';
import { inPieces } from '../../exports/in-pieces';
import { materialsByKey } from '../library-keys';
import type { ImportParts, Taker } from '../table-import';

/** Those whose composition names a material of the library: only these can be part of a circle. */
function namingOthers(db: Reader, all: readonly Material[]): Material[] {
  const rows = db.all<{ name: string }>('SELECT trade_name AS name FROM material');
  const names = new Set(rows.map(({ name }) => tradeNameKey(name)));
  return all.filter(({ composition }) => composition.some(({ inci }) => names.has(tradeNameKey(inci))));
}

/** A new one that looks like one of the library is told, so that nothing is taken in twice under two names. */
function withLookAlike(planned: PlannedRow, shelf: LookAlikes): PlannedRow {
  const { outcome, content, before } = planned;
  const [alike] = content && !before ? shelf.like({ id: '', ...content }) : [];
  if (!alike) return planned;
  const by = joined(alike.by.map((one) => LIKENESS_WORDS[one]));
  const note = `It looks like “${shelf.nameOf(alike.id)}”, which is in the library: ${by}.`;
  return { ...planned, outcome: { ...outcome, notes: [...outcome.notes, note] } };
}

/** Takes raw materials in, with their compositions and offers. */
export function materialsTaker(
  db: Reader,
  { key, taking, region }: ImportParts,
): Taker<Material, MaterialContent> {
  const byKey = materialsByKey(db, key);
  let alikes: Promise<LookAlikes> | undefined;
  return {
    repository: materialRecords,
    async plan(reader, rows) {
      const shelf = await (alikes ??= inPieces(heldLookAlikes(readSketches(reader))));
      const wanted = rows.flatMap((row) => byKey.get(keyOf(row, key)) ?? []);
      const held = materials.readMany(reader, wanted);
      const known = (name: string): Material[] => (byKey.get(name) ?? []).flatMap((id) => held.get(id) ?? []);
      return rows.map((row) => withLookAlike(planRow(row, { key, known, taking, region }), shelf));
    },
    cameSince(reader, planned) {
      const now = materialsByKey(reader, key);
      const made = planned.find(({ before, content }) => content && !before && now.has(plain(content[key])));
      return made?.outcome.name ?? null;
    },
    refuseTogether(tx, all) {
      // Once all stand: a blend may name another material of the same table.
      for (const one of namingOthers(tx, all)) refuseCircularComposition(tx, one);
    },
    refuseUsed(tx, added) {
      const [use] = materialUses(tx, added);
      if (!use) return;
      throw new Problem({
        code: 'in-use',
        title: `“${added.tradeName}” is used in ${use.formulaName} by now.`,
        advice: 'Take it out of the formula first. Nothing was changed.',
      });
    },
  };
}
