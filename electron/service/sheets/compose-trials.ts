import type { SheetDefinition } from '@core/sheets/kit/definition';
import { sheetFileName } from '@core/sheets/requests';
import { trialsSheet } from '@core/sheets/trials-sheet';
import type { Settings } from '@core/settings/settings';
import { readMaterials } from '@db/materials/read';
import { readSeries } from '@db/trials/trials';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';

/** A trial series to weigh by and write on. @throws Problem `not-found` */
export function composeTrials(
  context: ServiceContext,
  seriesId: string,
  settings: Settings,
  printedAt: string,
): { definition: SheetDefinition; fileName: string } {
  const { library } = context.session.current();
  const { series } = found(readSeries(library, seriesId), 'trial series');
  const ids = series.trials.flatMap((trial) => trial.lines.map((line) => line.materialId));
  const materials = Object.fromEntries(readMaterials(library, ids));
  return {
    definition: trialsSheet(series, materials, settings, printedAt),
    fileName: sheetFileName('trials', [series.title]),
  };
}
