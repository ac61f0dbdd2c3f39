import type { TrialSeries } from '@core/trials/trial-series';
import { readMaterials } from '@db/materials/materials';
import { readSeries } from '@db/trials/trials';
import { found } from '../../problems/found';
import { kindOfSheet } from './kind';
import type { MaterialsById } from './materials-by-id';

interface Subject {
  series: TrialSeries;
  materials: MaterialsById;
}

export const trials = kindOfSheet<'trials', Subject>('trials', {
  read(library, request) {
    const series = found(readSeries(library, request.seriesId), 'trial series');
    const ids = series.trials.flatMap((trial) => trial.lines.map((line) => line.materialId));
    const materials = Object.fromEntries(readMaterials(library, ids));
    return { subject: { series, materials }, name: [series.title] };
  },
  async setting() {
    const { trialsSheet } = await import('@core/sheets/trials-sheet');
    return (subject, settings, printedAt) =>
      trialsSheet(subject.series, subject.materials, settings, printedAt);
  },
});
