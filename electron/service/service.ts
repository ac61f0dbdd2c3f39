import { Hono } from 'hono';
import { Problem } from '@core/problems/problem';
import { attachmentsRoutes } from './attachments/routes';
import { batchesRoutes } from './batches/routes';
import { changesRoutes } from './changes/routes';
import type { ServiceContext } from './context';
import { emulsionsRoutes } from './emulsions/routes';
import { exportsRoutes } from './exports/routes';
import { formulasRoutes } from './formulas/routes';
import { findRoutes } from './lists/find-routes';
import { importsRoutes } from './imports/routes';
import { lawRoutes } from './limits/law-routes';
import { limitsRoutes } from './limits/routes';
import { libraryRoutes } from './library/routes';
import { meetingRoutes } from './meeting/routes';
import { lookAlikeRoutes } from './lookalikes/routes';
import { materialsRoutes } from './materials/routes';
import { answerProblem } from './problems/problem-details';
import { limitBodies } from './requests/body-sizes';
import { waitForLibrary } from './requests/wait-for-library';
import { recordRoutes } from './record/routes';
import { searchesRoutes } from './searches/routes';
import { substancesRoutes } from './substances/routes';
import { settingsRoutes } from './settings/routes';
import { sheetsRoutes } from './sheets/routes';
import { todayRoutes } from './today/routes';
import { trialsRoutes } from './trials/routes';

/** The service: every route of Stillroom's, from web Request to web Response. Hosts only carry requests to it. */
export function createService(context: ServiceContext) {
  const service = new Hono()
    .basePath('/api')
    .use(limitBodies())
    .use(waitForLibrary(context))
    .route('/library', libraryRoutes(context))
    .route('/changes', changesRoutes(context))
    .route('/settings', settingsRoutes(context))
    .route('/materials', materialsRoutes(context))
    .route('/searches', searchesRoutes(context))
    .route('/attachments', attachmentsRoutes(context))
    .route('/formulas', formulasRoutes(context))
    .route('/batches', batchesRoutes(context))
    .route('/find', findRoutes(context))
    .route('/sheets', sheetsRoutes(context))
    .route('/emulsions', emulsionsRoutes(context))
    .route('/today', todayRoutes(context))
    .route('/trials', trialsRoutes(context))
    .route('/substances', substancesRoutes(context))
    .route('/limits', limitsRoutes(context))
    .route('/law', lawRoutes(context))
    .route('/exports', exportsRoutes(context))
    .route('/look-alikes', lookAlikeRoutes(context))
    .route('/meetings', meetingRoutes(context))
    .route('/imports', importsRoutes(context))
    .route('/records', recordRoutes(context));
  service.onError(answerProblem);
  service.notFound((c) =>
    answerProblem(
      new Problem({
        code: 'not-found',
        title: 'There is nothing at this address.',
        advice: 'Go back to the list.',
      }),
      c,
    ),
  );
  return service;
}

/** The service's type: what the typed client of the screens is built on. */
export type Service = ReturnType<typeof createService>;
