import type { Batch } from '@core/batches/batch';
import type { FormulaVersion } from '@core/formulas/formula';
import { readBatch } from '@db/batches/batches';
import { readVersion } from '@db/formulas/versions';
import { found } from '../../problems/found';
import { kindOfSheet } from './kind';

interface Subject {
  batch: Batch;
  version: FormulaVersion;
}

export const batch = kindOfSheet<'batch', Subject>('batch', {
  read(library, request) {
    const read = found(readBatch(library, request.batchId), 'batch');
    const version = found(readVersion(library, read.versionId), 'version');
    return { subject: { batch: read, version }, name: [read.number, version.content.name] };
  },
  async setting() {
    const { batchSheet } = await import('@core/sheets/batch-sheet');
    return (subject, settings, printedAt) => batchSheet(subject.batch, subject.version, settings, printedAt);
  },
});
