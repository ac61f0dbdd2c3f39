import { BATCH_COLUMNS, type BatchTableRow } from '@core/batches/table-columns';
import { fieldColumns } from '@core/exports/field-columns';
import { FORMULA_LINE_COLUMNS, type FormulaTableLine } from '@core/formulas/table-columns';
import { inciWords } from '@core/materials/words';
import { formulaShares } from '@core/formulas/shares';
import { percentFromPpm } from '@core/quantities/share';
import type { TableColumn } from '@core/record/table-column';
import { readBatchEntries } from '@db/batches/batches';
import { readBatchDocuments } from '@db/batches/documents';
import { readOutcomes } from '@db/batches/outcomes';
import type { Reader } from '@db/database';
import { formulaRecords, readFormula } from '@db/formulas/drafts';
import { limitRecords } from '@db/limits/limits';
import { materialRecords, materials } from '@db/materials/materials';
import type { Kept } from '@db/record/record-table';
import type { Repository } from '@db/record/repository';
import { substanceRecords } from '@db/substances/substances';
import type { Noun } from '../lists/nouns';
import type { NounTable } from './noun-table';
import { TRIAL_TABLES } from './trial-tables';

/** A row a record, from the fields of its noun. */
function ofFields(name: string, repository: Repository<Kept, object>): NounTable {
  const changed: TableColumn<Kept> = {
    heading: 'Changed',
    cell: ({ updatedAt }) => ({ date: updatedAt.slice(0, 10) }),
  };
  return {
    name,
    columns: (region) => [...fieldColumns(repository.noun.fields, region), changed] as TableColumn<never>[],
    rows: (db, ids) => ids.flatMap((id) => repository.read(db, id) ?? []),
  };
}

function linesOf(db: Reader, id: string): FormulaTableLine[] {
  const formula = readFormula(db, id);
  if (!formula) return [];
  const { byLine } = formulaShares(formula);
  const named = materials.readMany(
    db,
    formula.phases.flatMap(({ lines }) => lines.map(({ materialId }) => materialId)),
  );
  return formula.phases.flatMap((phase, at) =>
    phase.lines.map((line) => {
      const material = named.get(line.materialId);
      return {
        code: formula.code,
        formula: formula.name,
        phase: at,
        phaseTitle: phase.title,
        material: material?.tradeName ?? '',
        materialCode: material?.code ?? '',
        inci: material ? inciWords(material) : '',
        percent: percentFromPpm(byLine.get(line.id) ?? line.ppm),
        toHundred: line.toHundred,
        note: line.note,
      };
    }),
  );
}

function batchRows(db: Reader, ids: readonly string[]): BatchTableRow[] {
  const entries = new Map(readBatchEntries(db, ids).map((entry) => [entry.id, entry]));
  return ids.flatMap((id) => {
    const entry = entries.get(id);
    if (!entry) return [];
    const outcome = readOutcomes(db, id).at(-1) ?? null;
    return [{ ...entry, outcome, documents: readBatchDocuments(db, id) }];
  });
}

/** What can be saved as a table of each noun that has a list; its own records first. */
export const NOUN_TABLES: Readonly<Record<Noun, readonly NounTable[]>> = {
  materials: [ofFields('Raw materials', materialRecords)],
  formulas: [
    ofFields('Formulas', formulaRecords),
    {
      name: 'Lines of formulas',
      columns: () => FORMULA_LINE_COLUMNS as readonly TableColumn<never>[],
      rows: (db, ids) => ids.flatMap((id) => linesOf(db, id)),
    },
  ],
  batches: [
    { name: 'Batches', columns: () => BATCH_COLUMNS as readonly TableColumn<never>[], rows: batchRows },
  ],
  trials: TRIAL_TABLES,
  substances: [ofFields('Substances', substanceRecords)],
  limits: [ofFields('Limits', limitRecords)],
};
