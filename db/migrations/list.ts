import { batchesSchema } from './0001-batches';
import { formulasSchema } from './0001-formulas';
import { materialsSchema } from './0001-materials';
import { offersWithoutPriceSchema } from './0002-offers-without-price';
import { recordSchema, recordSchemaEnd, versionsToStates } from './0003-record';
import { countryOfOriginSchema } from './0004-country-of-origin';
import { substancesAndLimitsSchema } from './0005-substances-and-limits';
import { acceptedFindingsSchema } from './0006-accepted-findings';
import { decisionsAndProductFilesSchema } from './0007-decisions-and-product-files';
import { datesOfDocumentsSchema } from './0008-dates-of-documents';
import { classesAndSolubilitySchema } from './0009-classes-and-solubility';
import { outcomesOfBatchesSchema } from './0010-outcomes-of-batches';
import { casNumbersOfMaterialsSchema } from './0011-cas-numbers-of-materials';
import { withdrawnMaterialsSchema } from './0012-withdrawn-materials';
import { issuesSchema } from './0013-issues';
import { documentsOfBatchesSchema } from './0014-documents-of-batches';
import { titaniumDioxideNotClassedSchema } from './0015-titanium-dioxide-not-classed';
import { namesLookedUpSchema } from './0016-names-looked-up';
import type { Migration } from './runner';

/** The library's schema, in the order it grew. Append only: a migration that has shipped is never edited. */
export const migrations: Migration[] = [
  { number: 1, name: 'materials, formulas, batches', sql: materialsSchema + formulasSchema + batchesSchema },
  { number: 2, name: 'offers without a price', sql: offersWithoutPriceSchema },
  {
    number: 3,
    name: 'the record',
    sql: recordSchema,
    convert: versionsToStates,
    thenSql: recordSchemaEnd,
    rebuildsTables: true,
  },
  { number: 4, name: 'country of origin', sql: countryOfOriginSchema },
  { number: 5, name: 'substances and limits of law', sql: substancesAndLimitsSchema },
  { number: 6, name: 'accepted findings', sql: acceptedFindingsSchema },
  { number: 7, name: 'decisions and product files', sql: decisionsAndProductFilesSchema },
  { number: 8, name: 'dates of documents', sql: datesOfDocumentsSchema },
  { number: 9, name: 'classes and solubility of substances', sql: classesAndSolubilitySchema },
  { number: 10, name: 'outcomes of batches', sql: outcomesOfBatchesSchema },
  { number: 11, name: 'CAS numbers of materials', sql: casNumbersOfMaterialsSchema },
  { number: 12, name: 'withdrawn materials', sql: withdrawnMaterialsSchema },
  { number: 13, name: 'issues', sql: issuesSchema },
  { number: 14, name: 'documents of batches', sql: documentsOfBatchesSchema },
  { number: 15, name: 'titanium dioxide is not classed', sql: titaniumDioxideNotClassedSchema },
  { number: 16, name: 'names looked up', sql: namesLookedUpSchema },
];
