import { trialSeries, type TrialSeries } from '@core/trials/trial-series';
import type { Material } from '@core/materials/material';
import { readMaterials } from '@db/materials/materials';
import { seriesRecords, type SeriesRecord } from '@db/trials/trials';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { listPage } from '../lists/list-page';
import { validBody } from '../problems/validated';
import { addRecord, changeRecord, record, removeRecord } from '../record/records';

const content = z
  .object(trialSeries.shape)
  .omit({ id: true, createdAt: true })
  .refine((series) => series.chosen === null || series.chosen < series.trials.length, {
    message: 'The chosen trial is not in the series.',
    path: ['chosen'],
  });
const edit = z.object({ revision: z.int(), content });

/** A series with the count of its edits, so that two windows cannot overwrite each other. */
interface KeptSeries {
  revision: number;
  updatedAt: string;
  series: TrialSeries;
}

/** A series as the screens take it: with the count of its edits beside it. */
function shown({ revision, updatedAt, ...series }: SeriesRecord): KeptSeries {
  return { revision, updatedAt, series };
}

/** A series with the materials that its lines name; one deleted since is missing there. */
function withMaterials(
  context: ServiceContext,
  kept: SeriesRecord,
): KeptSeries & { materials: Record<string, Material> } {
  const ids = kept.trials.flatMap((trial) => trial.lines.map((line) => line.materialId));
  const materials = Object.fromEntries(readMaterials(context.session.current().library, ids));
  return { ...shown(kept), materials };
}

/** Trial series: planned at the bench, kept with what came of them. */
export function trialsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await listPage(context, 'trials', c.req.url)))
    .post('/', validBody(content), (c) =>
      c.json(shown(addRecord(context, seriesRecords, () => c.req.valid('json'))), 201),
    )
    .get('/:id', (c) => c.json(withMaterials(context, record(context, seriesRecords, c.req.param('id')))))
    .put('/:id', validBody(edit), (c) => {
      const { revision, content: wanted } = c.req.valid('json');
      return c.json(shown(changeRecord(context, seriesRecords, c.req.param('id'), revision, () => wanted)));
    })
    .delete('/:id', (c) => {
      removeRecord(context, seriesRecords, c.req.param('id'));
      return c.body(null, 204);
    });
}
