import {
  materialContent,
  storedContent,
  type Material,
  type MaterialContent,
} from '@core/materials/material';
import { Problem } from '@core/problems/problem';
import { shelfEntry } from '@core/shelf/entry';
import { fromParams } from '@core/shelf/query-params';
import { readMaterial, readMaterialState } from '@db/materials/read';
import { materialUses } from '@db/materials/uses';
import { deleteMaterial, insertMaterial, updateMaterial } from '@db/materials/write';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { found, sameRevision } from '../problems/found';
import { validBody } from '../problems/validated';

const edit = z.object({ revision: z.int(), content: materialContent });

/** Adds a material to the library and its shelf. */
export function addMaterial(context: ServiceContext, content: MaterialContent): Material {
  const { library, shelf } = context.session.current();
  const at = context.now().toISOString();
  const added: Material = { ...content, id: context.newId(), revision: 1, createdAt: at, updatedAt: at };
  library.transaction((tx) => insertMaterial(tx, added));
  shelf.put(shelfEntry(added));
  return added;
}

function changeMaterial(context: ServiceContext, id: string, change: z.infer<typeof edit>): Material {
  const { library, shelf } = context.session.current();
  const { revision, createdAt } = found(readMaterialState(library, id), 'raw material');
  sameRevision(change.revision, revision, 'raw material');
  const updatedAt = context.now().toISOString();
  const after: Material = { ...change.content, id, revision: revision + 1, createdAt, updatedAt };
  library.transaction((tx) => updateMaterial(tx, after));
  shelf.put(shelfEntry(after));
  return after;
}

function removeMaterial(context: ServiceContext, id: string): void {
  const { library, shelf } = context.session.current();
  const known = found(readMaterial(library, id), 'raw material');
  const uses = materialUses(library, id);
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
  library.transaction((tx) => deleteMaterial(tx, id));
  shelf.remove(id);
}

export function materialsRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', (c) =>
      c.json(context.session.current().shelf.search(fromParams(new URL(c.req.url).searchParams))),
    )
    .post('/', validBody(materialContent), (c) => c.json(addMaterial(context, c.req.valid('json')), 201))
    .get('/:id', (c) =>
      c.json(found(readMaterial(context.session.current().library, c.req.param('id')), 'raw material')),
    )
    .get('/:id/uses', (c) => c.json(materialUses(context.session.current().library, c.req.param('id'))))
    .put('/:id', validBody(edit), (c) =>
      c.json(changeMaterial(context, c.req.param('id'), c.req.valid('json'))),
    )
    .post('/:id/copy', (c) => {
      const original = found(
        readMaterial(context.session.current().library, c.req.param('id')),
        'raw material',
      );
      const tradeName = `${original.tradeName.slice(0, 190)} (copy)`;
      return c.json(addMaterial(context, storedContent.parse({ ...original, tradeName, code: '' })), 201);
    })
    .delete('/:id', (c) => {
      removeMaterial(context, c.req.param('id'));
      return c.body(null, 204);
    });
}
