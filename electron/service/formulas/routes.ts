import { blankProductFile } from '@core/formulas/product-file';
import {
  blankTarget,
  enteredFormula,
  formulaContent,
  PRODUCT_TYPES,
  USES,
  type Formula,
  type FormulaContent,
  type FormulaVersion,
} from '@core/formulas/formula';
import { enteredDecision } from '@core/formulas/decision';
import { blankMarket } from '@core/products/market';
import type { FormulaRecord } from '@core/formulas/noun';
import { formulaLines } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';
import { Problem } from '@core/problems/problem';
import { lineText, nameText } from '@core/quantities/text';
import { id } from '@core/record/id';
import { formulaRecords } from '@db/formulas/drafts';
import { drawFormulaCode } from '@db/formulas/numbers';
import { listVersions, readVersion } from '@db/formulas/versions';
import { lawThen } from '@db/limits/law-then';
import { readMaterials, withdrawnAmong } from '@db/materials/materials';
import { readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { listPage } from '../lists/list-page';
import { found } from '../problems/found';
import { validBody } from '../problems/validated';
import { addRecord, changeRecord, changeTogether, record, removeRecord } from '../record/records';
import { decideOn } from './decide';
import { reformulateFromLibrary, reformulateRequest } from './reformulate-request';
import { recordVersion, versionRequest } from './record-version';

const start = z.object({
  name: nameText('the formula’s name'),
  productType: z.enum(PRODUCT_TYPES),
  use: z.enum(USES),
});
const edit = z.object({ revision: z.int(), content: enteredFormula });
const together = z.object({
  changes: z
    .array(z.object({ id, revision: z.int(), content: enteredFormula }))
    .min(1, 'Choose at least one formula.')
    .max(500, 'Change 500 formulas at a time at most.')
    .refine((all) => new Set(all.map((one) => one.id)).size === all.length, 'A formula is named twice.'),
  why: lineText(200),
});
const restoring = z.object({ revision: z.int() });
const archiving = z.object({ revision: z.int(), archived: z.boolean() });

/** A formula with the materials that its lines name, by id. */
function withMaterials(
  context: ServiceContext,
  formula: Formula,
): { formula: Formula; materials: Record<string, Material> } {
  const { library } = context.session.current();
  const ids = formulaLines(formula).map((line) => line.materialId);
  return { formula, materials: Object.fromEntries(readMaterials(library, ids)) };
}

function draft(context: ServiceContext, id: string): Formula {
  return record(context, formulaRecords, id);
}

function startFormula(context: ServiceContext, wanted: z.infer<typeof start>): Formula {
  const { formulaPrefix } = readSettings(context.session.current().library);
  return addRecord(context, formulaRecords, (tx) => ({
    ...wanted,
    code: drawFormulaCode(tx, formulaPrefix),
    purpose: '',
    market: blankMarket(),
    phases: ['Water phase', 'Oil phase', 'Cool-down'].map((title) => ({
      id: context.newId(),
      title,
      temperatureC: title === 'Cool-down' ? 40 : 75,
      lines: [],
    })),
    steps: [],
    target: blankTarget(),
    accepted: [],
    ...blankProductFile(),
    notes: '',
    archived: false,
  }));
}

/** Refuses lines of materials that were deleted meanwhile. @throws Problem invalid-input, naming the lines */
function refuseGone(context: ServiceContext, content: FormulaContent): void {
  const lines = formulaLines(content);
  const ids = lines.map((line) => line.materialId);
  const known = readMaterials(context.session.current().library, ids);
  const gone = ids.filter((materialId) => !known.has(materialId));
  if (gone.length === 0) return;
  throw new Problem({
    code: 'invalid-input',
    title: `${gone.length === 1 ? 'A line names a material that is' : `${gone.length} lines name materials that are`} no longer in the library.`,
    advice: 'Replace or remove the marked lines; the rest of your draft is kept as it is.',
    fields: lines
      .filter((line) => gone.includes(line.materialId))
      .map((line) => ({ path: `line.${line.id}`, message: 'This material was deleted.' })),
  });
}

function changeFormula(
  context: ServiceContext,
  id: string,
  revision: number,
  change: Partial<FormulaRecord>,
): Formula {
  return changeRecord(context, formulaRecords, id, revision, (before) => {
    refuseGone(context, { ...before, ...change });
    return change;
  });
}

/** Changes several drafts as one: all of them, or none. */
function changeFormulas(context: ServiceContext, { changes, why }: z.infer<typeof together>): Formula[] {
  for (const { content } of changes) refuseGone(context, content);
  const all = changes.map(({ id: formulaId, revision, content }) => ({
    id: formulaId,
    revision,
    change: content,
  }));
  return changeTogether(context, formulaRecords, all, why);
}

/** A formula of its own with what another holds, under a number of its own. @throws Problem invalid-input */
function copyContent(context: ServiceContext, original: FormulaContent, of: string): Formula {
  refuseGone(context, original);
  const { formulaPrefix } = readSettings(context.session.current().library);
  return addRecord(context, formulaRecords, (tx) => ({
    ...original,
    // Claims and reports speak of the product that was examined, not of its copy.
    ...blankProductFile(),
    name: `${original.name.slice(0, 170)} (${of})`,
    code: drawFormulaCode(tx, formulaPrefix),
    archived: false,
  }));
}

function copyFormula(context: ServiceContext, id: string): Formula {
  return copyContent(context, formulaContent.parse(draft(context, id)), 'copy');
}

function version(context: ServiceContext, versionId: string): FormulaVersion {
  return found(readVersion(context.session.current().library, versionId), 'version');
}

function copyVersion(context: ServiceContext, versionId: string): Formula {
  const { content, number } = version(context, versionId);
  return copyContent(context, content, `from version ${number}`);
}

/** Puts a version's content in place of the draft, which stays in the history. */
function restoreVersion(context: ServiceContext, versionId: string, revision: number): Formula {
  const { formulaId, content } = version(context, versionId);
  // A code is the formula's, whatever it was called when the version was recorded.
  // Reports and claims are of the product, and may be newer than the version.
  const { code, claims, reports, statements } = draft(context, formulaId);
  return changeFormula(context, formulaId, revision, { ...content, code, claims, reports, statements });
}

function removeFormula(context: ServiceContext, id: string): void {
  const known = draft(context, id);
  if (listVersions(context.session.current().library, id).length > 0)
    throw new Problem({
      code: 'in-use',
      title: `${known.name} has recorded versions, which are kept for good.`,
      advice:
        'Archive the formula instead: it leaves the lists, and its versions and batches stay traceable.',
    });
  removeRecord(context, formulaRecords, id);
}

export function formulasRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await listPage(context, 'formulas', c.req.url)))
    .post('/', validBody(start), (c) => c.json(startFormula(context, c.req.valid('json')), 201))
    .put('/together', validBody(together), (c) => {
      const changed = changeFormulas(context, c.req.valid('json'));
      return c.json(changed.map(({ id: formulaId, revision }) => ({ id: formulaId, revision })));
    })
    .get('/versions/:versionId', (c) => c.json(version(context, c.req.param('versionId'))))
    .get('/versions/:versionId/law', (c) => {
      const { recordedAt } = version(context, c.req.param('versionId'));
      return c.json(lawThen(context.session.current().library, recordedAt));
    })
    .get('/versions/:versionId/withdrawn-materials', (c) => {
      const { materials } = version(context, c.req.param('versionId'));
      return c.json(withdrawnAmong(context.session.current().library, Object.keys(materials)));
    })
    .post('/versions/:versionId/copy', (c) => c.json(copyVersion(context, c.req.param('versionId')), 201))
    .post('/versions/:versionId/restore', validBody(restoring), (c) =>
      c.json(restoreVersion(context, c.req.param('versionId'), c.req.valid('json').revision)),
    )
    .post('/versions/:versionId/decisions', validBody(enteredDecision), (c) =>
      c.json(decideOn(context, c.req.param('versionId'), c.req.valid('json')), 201),
    )
    .get('/:id', (c) => c.json(withMaterials(context, draft(context, c.req.param('id')))))
    .put('/:id', validBody(edit), (c) => {
      const { revision, content } = c.req.valid('json');
      return c.json(changeFormula(context, c.req.param('id'), revision, content));
    })
    .put('/:id/archived', validBody(archiving), (c) => {
      const { revision, archived } = c.req.valid('json');
      return c.json(changeFormula(context, c.req.param('id'), revision, { archived }));
    })
    .post('/:id/reformulations', validBody(reformulateRequest), async (c) =>
      c.json(await reformulateFromLibrary(context, c.req.param('id'), c.req.valid('json'), c.req.raw.signal)),
    )
    .post('/:id/copy', (c) => c.json(copyFormula(context, c.req.param('id')), 201))
    .delete('/:id', (c) => {
      removeFormula(context, c.req.param('id'));
      return c.body(null, 204);
    })
    .get('/:id/versions', (c) => c.json(listVersions(context.session.current().library, c.req.param('id'))))
    .post('/:id/versions', validBody(versionRequest), (c) =>
      c.json(recordVersion(context, c.req.param('id'), c.req.valid('json')), 201),
    );
}
