import { trialSeries } from '@core/trials/trial-series';
import type { Material } from '@core/materials/material';
import { readMaterials } from '@db/materials/read';
import { deleteSeries, listSeries, readSeries, writeSeries, type KeptSeries } from '@db/trials/trials';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { found, sameRevision } from '../problems/found';
import { validBody } from '../problems/validated';

const content = z
  .object(trialSeries.shape)
  .omit({ id: true, createdAt: true })
  .refine((series) => series.chosen === null || series.chosen < series.trials.length, {
    message: 'The chosen trial is not in the series.',
    path: ['chosen'],
  });
const edit = z.object({ revision: z.int(), content });

function known(context: ServiceContext, id: string): KeptSeries {
  return found(readSeries(context.session.current().library, id), 'trial series');
}

function keep(context: ServiceContext, kept: KeptSeries): KeptSeries {
  context.session.current().library.transaction((tx) => writeSeries(tx, kept));
  return kept;
}

/** A series with the materials that its lines name; one deleted since is missing there. */
function withMaterials(
  context: ServiceContext,
  kept: KeptSeries,
): KeptSeries & { materials: Record<string, Material> } {
  const ids = kept.series.trials.flatMap((trial) => trial.lines.map((line) => line.materialId));
  const materials = Object.fromEntries(readMaterials(context.session.current().library, ids));
  return { ...kept, materials };
}

function change(context: ServiceContext, id: string, wanted: z.infer<typeof edit>): KeptSeries {
  const before = known(context, id);
  sameRevision(wanted.revision, before.revision, 'trial series');
  const { createdAt } = before.series;
  const updatedAt = context.now().toISOString();
  return keep(context, {
    revision: before.revision + 1,
    updatedAt,
    series: { ...wanted.content, id, createdAt },
  });
}

/** Trial series: planned at the bench, kept with what came of them. */
export function trialsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) => c.json(listSeries(context.session.current().library)))
    .post('/', validBody(content), (c) => {
      const at = context.now().toISOString();
      const series = { ...c.req.valid('json'), id: context.newId(), createdAt: at };
      return c.json(keep(context, { revision: 1, updatedAt: at, series }), 201);
    })
    .get('/:id', (c) => c.json(withMaterials(context, known(context, c.req.param('id')))))
    .put('/:id', validBody(edit), (c) => c.json(change(context, c.req.param('id'), c.req.valid('json'))))
    .delete('/:id', (c) => {
      const { id } = known(context, c.req.param('id')).series;
      context.session.current().library.transaction((tx) => deleteSeries(tx, id));
      return c.body(null, 204);
    });
}
