import type { Batch } from '@core/batches/batch';
import type { BatchOutcome } from '@core/batches/outcome';
import type { VersionDecision } from '@core/formulas/decision';
import type { FormulaVersion } from '@core/formulas/formula';
import { withdrawnAmong } from '@db/materials/materials';
import type { Withdrawn } from '@core/materials/withdrawal';
import { readBatch } from '@db/batches/batches';
import { readOutcomes } from '@db/batches/outcomes';
import { readDecisions } from '@db/formulas/decisions';
import { readVersion } from '@db/formulas/versions';
import { found } from '../../problems/found';
import { kindOfSheet } from './kind';

interface Subject {
  batch: Batch;
  version: FormulaVersion;
  decisions: VersionDecision[];
  withdrawn: Withdrawn[];
  outcome: BatchOutcome | null;
}

export const batch = kindOfSheet<'batch', Subject>('batch', {
  read(library, request) {
    const read = found(readBatch(library, request.batchId), 'batch');
    const version = found(readVersion(library, read.versionId), 'version');
    const decisions = readDecisions(library, version.id);
    const outcome = readOutcomes(library, read.id).at(-1) ?? null;
    const withdrawn = withdrawnAmong(library, Object.keys(version.materials));
    return {
      subject: { batch: read, version, decisions, withdrawn, outcome },
      name: [read.number, version.content.name],
    };
  },
  async setting() {
    const { batchSheet } = await import('@core/sheets/batch-sheet');
    return ({ batch: made, version, decisions, withdrawn, outcome }, settings, printedAt) =>
      batchSheet(made, { ...version, decisions, withdrawn }, settings, printedAt, outcome);
  },
});
