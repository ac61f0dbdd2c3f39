import {
  materialContent,
  storedContent,
  type Material,
  type MaterialContent,
} from '@core/materials/material';
import { Problem } from '@core/problems/problem';
import { same } from '@core/record/same';
import { materialRecords, readMaterials, refuseCircularComposition } from '@db/materials/materials';
import { materialsHolding } from '@db/materials/nested';
import { materialUses } from '@db/materials/uses';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { listPage } from '../lists/list-page';
import { found } from '../problems/found';
import { validBody } from '../problems/validated';
import { addRecord, changeRecord, record, removeRecord } from '../record/records';
import { matchMaterials, namesToMatch } from './match-materials';

const edit = z.object({ revision: z.int(), content: materialContent });

function material(context: ServiceContext, id: string): Material {
  return record(context, materialRecords, id);
}

function addMaterial(context: ServiceContext, content: MaterialContent): Material {
  return addRecord(context, materialRecords, (tx) => {
    refuseCircularComposition(tx, content);
    return content;
  });
}

/** What else is no longer what it was when a material changed: those that hold it, whose own records stay. */
function tellThoseThatHold(context: ServiceContext, changed: readonly Material[]): void {
  const { session } = context;
  const own = new Set(changed.map(({ id }) => id));
  const names = changed.map(({ tradeName }) => tradeName);
  for (const { id, revision } of materialsHolding(session.current().library, names))
    if (!own.has(id)) session.changes.tell({ kind: 'material', id, revision });
}

/** A material with what the materials within it hold, as formulas count it. */
function wholeMaterial(context: ServiceContext, id: string): Material {
  return found(readMaterials(context.session.current().library, [id]).get(id), 'material');
}

function changeMaterial(
  context: ServiceContext,
  id: string,
  { revision, content }: z.infer<typeof edit>,
): Material {
  const naming = ({ tradeName, composition }: MaterialContent) => ({ tradeName, composition });
  let before: Material | undefined;
  const after = changeRecord(context, materialRecords, id, revision, (was) => {
    before = was;
    // What it is called and what it holds alone can make it hold itself.
    if (!same(naming(was), naming(content)))
      refuseCircularComposition(context.session.current().library, content);
    return content;
  });
  if (before && !same(naming(before), naming(after))) tellThoseThatHold(context, [before, after]);
  return after;
}

function copyMaterial(context: ServiceContext, id: string): Material {
  const original = material(context, id);
  const tradeName = `${original.tradeName.slice(0, 190)} (copy)`;
  // What was withdrawn is the other one.
  const blank = { withdrawnOn: '', withdrawnWhy: '' };
  return addMaterial(context, storedContent.parse({ ...original, ...blank, tradeName, code: '' }));
}

function removeMaterial(context: ServiceContext, id: string): void {
  const known = material(context, id);
  const uses = materialUses(context.session.current().library, known);
  if (uses.length > 0) {
    const names = [...new Set(uses.map((use) => use.formulaName))];
    const shown = names.slice(0, 3).join(', ') + (names.length > 3 ? ` and ${names.length - 3} more` : '');
    throw new Problem({
      code: 'in-use',
      title: `${known.tradeName} is used in ${shown}.`,
      advice: 'Archive it instead: it leaves the lists, and the formulas that use it stay whole.',
      facts: { uses },
    });
  }
  removeRecord(context, materialRecords, id);
  tellThoseThatHold(context, [known]);
}

export function materialsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await listPage(context, 'materials', c.req.url)))
    .post('/', validBody(materialContent), (c) => c.json(addMaterial(context, c.req.valid('json')), 201))
    .post('/matches', validBody(namesToMatch), async (c) =>
      c.json(await matchMaterials(context, c.req.valid('json'))),
    )
    .get('/:id', (c) => c.json(material(context, c.req.param('id'))))
    .get('/:id/uses', (c) =>
      c.json(materialUses(context.session.current().library, material(context, c.req.param('id')))),
    )
    .get('/:id/whole', (c) => c.json(wholeMaterial(context, c.req.param('id'))))
    .put('/:id', validBody(edit), (c) =>
      c.json(changeMaterial(context, c.req.param('id'), c.req.valid('json'))),
    )
    .post('/:id/copy', (c) => c.json(copyMaterial(context, c.req.param('id')), 201))
    .delete('/:id', (c) => {
      removeMaterial(context, c.req.param('id'));
      return c.body(null, 204);
    });
}
