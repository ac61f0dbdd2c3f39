import { batchesSchema } from './0001-batches';
import { formulasSchema } from './0001-formulas';
import { materialsSchema } from './0001-materials';
import { offersWithoutPriceSchema } from './0002-offers-without-price';

/** The library's schema, in the order it grew. Append only: a migration that has shipped is never edited. */
export const migrations = [
  { number: 1, name: 'materials, formulas, batches', sql: materialsSchema + formulasSchema + batchesSchema },
  { number: 2, name: 'offers without a price', sql: offersWithoutPriceSchema },
];
