import { batchesSchema } from './0001-batches';
import { formulasSchema } from './0001-formulas';
import { materialsSchema } from './0001-materials';

/** The library's schema, in the order it grew. Append only: a migration that has shipped is never edited. */
export const migrations = [
  { number: 1, name: 'materials, formulas, batches', sql: materialsSchema + formulasSchema + batchesSchema },
];
