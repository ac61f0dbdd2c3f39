import { enteredFormula, type Formula } from '@core/formulas/formula';
import type { FormulaRecord } from '@core/formulas/noun';
import { materialMatcher } from '@core/formulas/pasting/match-materials';
import { planFormula, type FormulaPlanParts } from '@core/imports/plan-formula';
import { plain } from '@core/imports/plain';
import { Problem } from '@core/problems/problem';
import type { Reader } from '@db/database';
import { drawFormulaCode } from '@db/formulas/numbers';
import { formulaRecords } from '@db/formulas/drafts';
import { listVersions } from '@db/formulas/versions';
import { readSettings } from '@db/settings/settings';
import { readMaterialEntries } from '@db/materials/list';
import type { Taker } from '../table-import';

/** The ids of the formulas that bear a code or name, folded. */
function formulasByName(db: Reader): Map<string, string[]> {
  const known = new Map<string, string[]>();
  for (const { id, code, name } of db.all<Record<'id' | 'code' | 'name', string>>(
    'SELECT id, code, name FROM formula',
  ))
    for (const one of new Set([plain(code), plain(name)]))
      if (one !== '') known.set(one, [...(known.get(one) ?? []), id]);
  return known;
}

/** Takes formulas in: each with its phases and lines, over materials that the library holds. */
export function formulasTaker(db: Reader, newId: () => string): Taker<Formula, FormulaRecord> {
  const byName = formulasByName(db);
  const shelf = readMaterialEntries(db);
  const find = materialMatcher(shelf);
  const names = new Map(shelf.map(({ id, tradeName }) => [id, tradeName]));
  const { formulaPrefix } = readSettings(db);
  return {
    repository: formulaRecords,
    plan(reader, rows) {
      const parts: FormulaPlanParts = {
        find,
        nameOf: (id) => names.get(id) ?? 'A material',
        known: (name) =>
          (byName.get(plain(name)) ?? []).flatMap((id) => formulaRecords.read(reader, id) ?? []),
        newId,
      };
      return rows.map((row) => planFormula(row, parts));
    },
    cameSince(reader, planned) {
      const now = formulasByName(reader);
      const made = planned.find(({ before, content }) => content && !before && now.has(plain(content.name)));
      return made?.outcome.name ?? null;
    },
    complete: (tx, content) =>
      content.code === '' ? { ...content, code: drawFormulaCode(tx, formulaPrefix) } : content,
    refuseTogether: (_tx, all) => all.forEach((one) => enteredFormula.parse(one)),
    refuseUsed(tx, added) {
      if (listVersions(tx, added.id).length === 0) return;
      throw new Problem({
        code: 'in-use',
        title: `A version of “${added.name}” was recorded by now.`,
        advice: 'Versions stay. Archive the formula instead. Nothing was changed.',
      });
    },
  };
}
