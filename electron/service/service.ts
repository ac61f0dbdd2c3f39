import { Hono } from 'hono';
import { changesRoutes } from './changes/routes';
import type { ServiceContext } from './context';
import { libraryRoutes } from './library/routes';
import { nothingThere } from './problems/nothing-there';
import { answerProblem } from './problems/problem-details';
import { later } from './requests/later';
import { ROOMS } from './rooms';
import { limitBodies } from './requests/body-sizes';
import { waitForLibrary } from './requests/wait-for-library';

/** The service: every route of Stillroom's, from web Request to web Response. Hosts only carry requests to it. */
export function createService(context: ServiceContext) {
  const service = new Hono()
    .basePath('/api')
    .use(limitBodies())
    .use(waitForLibrary(context))
    .route('/library', libraryRoutes(context))
    .route('/changes', changesRoutes(context))
    .route('/settings', later('/settings', ROOMS.settings, context))
    .route('/materials', later('/materials', ROOMS.materials, context))
    .route('/searches', later('/searches', ROOMS.searches, context))
    .route('/attachments', later('/attachments', ROOMS.attachments, context))
    .route('/formulas', later('/formulas', ROOMS.formulas, context))
    .route('/batches', later('/batches', ROOMS.batches, context))
    .route('/find', later('/find', ROOMS.find, context))
    .route('/sheets', later('/sheets', ROOMS.sheets, context))
    .route('/emulsions', later('/emulsions', ROOMS.emulsions, context))
    .route('/today', later('/today', ROOMS.today, context))
    .route('/trials', later('/trials', ROOMS.trials, context))
    .route('/substances', later('/substances', ROOMS.substances, context))
    .route('/limits', later('/limits', ROOMS.limits, context))
    .route('/law', later('/law', ROOMS.law, context))
    .route('/exports', later('/exports', ROOMS.exports, context))
    .route('/look-alikes', later('/look-alikes', ROOMS.lookAlikes, context))
    .route('/meetings', later('/meetings', ROOMS.meetings, context))
    .route('/imports', later('/imports', ROOMS.imports, context))
    .route('/records', later('/records', ROOMS.records, context));
  service.onError(answerProblem);
  service.notFound((c) => answerProblem(nothingThere(), c));
  return service;
}

/** The service's type: what the typed client of the screens is built on. */
export type Service = ReturnType<typeof createService>;
