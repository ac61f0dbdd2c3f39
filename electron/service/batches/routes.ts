import { batchPlan, type Batch, type BatchPlan } from '@core/batches/batch';
import { enteredBatchDocument } from '@core/batches/document';
import { enteredOutcome, type BatchOutcome, type EnteredOutcome } from '@core/batches/outcome';
import { batchLines } from '@core/batches/plan-batch';
import { standingOf } from '@core/formulas/decision';
import { Problem } from '@core/problems/problem';
import { readDecisions } from '@db/formulas/decisions';
import { insertBatch, readBatch } from '@db/batches/batches';
import { readBatchDocuments } from '@db/batches/documents';
import { insertOutcome, readOutcomes } from '@db/batches/outcomes';
import { drawBatchNumber } from '@db/batches/numbers';
import { readVersion } from '@db/formulas/versions';
import { readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { listPage } from '../lists/list-page';
import { found } from '../problems/found';
import { validBody } from '../problems/validated';
import { tellChange } from '../record/tell-change';
import { addDocument, changeDocument, removeDocument } from './documents';

const DAY_MS = 86_400_000;

/** Refuses to make what was withdrawn. @throws Problem in-use */
function refuseWithdrawn(context: ServiceContext, versionId: string, number: number): void {
  const decisions = readDecisions(context.session.current().library, versionId);
  if (standingOf(decisions) !== 'withdrawn') return;
  throw new Problem({
    code: 'in-use',
    title: `Version ${number} is withdrawn: ${decisions.at(-1)?.reason ?? ''}`,
    advice: 'No batch is made of it. Choose another version, or correct the formula and record one.',
  });
}

function planned(context: ServiceContext, plan: BatchPlan): Batch {
  const { library } = context.session.current();
  const version = found(readVersion(library, plan.versionId), 'version');
  refuseWithdrawn(context, version.id, version.number);
  const { batchPrefix, languageRegion } = readSettings(library);
  const { totalMg, lines } = batchLines(version.content, plan, languageRegion);
  const at = context.now().toISOString();
  const added = library.transaction((tx) => {
    const number = drawBatchNumber(tx, batchPrefix);
    const made: Batch = { ...plan, id: context.newId(), number, createdAt: at, totalMg, lines };
    insertBatch(tx, made);
    return made;
  });
  tellChange(context, 'batch', { id: added.id, revision: 1 });
  return added;
}

/** Now; but later than what it corrects, although a clock was set back in between. */
function after(last: string | undefined, now: Date): string {
  return new Date(Math.max(now.getTime(), last === undefined ? 0 : Date.parse(last) + 1)).toISOString();
}

/** Writes down what came of a batch. What was told before stays. @throws Problem not-found, invalid-input */
function told(context: ServiceContext, id: string, entered: EnteredOutcome): BatchOutcome[] {
  const { library } = context.session.current();
  const known = found(readBatch(library, id), 'batch');
  const before = readOutcomes(library, known.id);
  const at = after(before.at(-1)?.at, context.now());
  // A day ahead of Greenwich may have begun.
  const tomorrow = new Date(context.now().getTime() + DAY_MS).toISOString().slice(0, 10);
  if (entered.finishedOn > tomorrow)
    throw new Problem({
      code: 'invalid-input',
      title: 'That day is still to come.',
      advice: 'Record the outcome of a batch once it is finished.',
    });
  const made = { ...entered, at };
  library.transaction((tx) => insertOutcome(tx, known.id, made));
  tellChange(context, 'batch', { id: known.id, revision: before.length + 2 });
  return [...before, made];
}

export function batchesRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await listPage(context, 'batches', c.req.url)))
    .post('/', validBody(batchPlan), (c) => c.json(planned(context, c.req.valid('json')), 201))
    .get('/:id', (c) => {
      const { library } = context.session.current();
      const known = found(readBatch(library, c.req.param('id')), 'batch');
      const version = found(readVersion(library, known.versionId), 'version');
      return c.json({
        ...{ batch: known, version, outcomes: readOutcomes(library, known.id) },
        documents: readBatchDocuments(library, known.id),
      });
    })
    .post('/:id/outcomes', validBody(enteredOutcome), (c) =>
      c.json(told(context, c.req.param('id'), c.req.valid('json')), 201),
    )
    .post('/:id/documents', validBody(enteredBatchDocument), (c) =>
      c.json(addDocument(context, c.req.param('id'), c.req.valid('json')), 201),
    )
    .put('/:id/documents/:document', validBody(enteredBatchDocument), (c) =>
      c.json(changeDocument(context, c.req.param(), c.req.valid('json'))),
    )
    .delete('/:id/documents/:document', (c) => c.json(removeDocument(context, c.req.param())));
}
