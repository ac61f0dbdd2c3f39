import { Hono } from 'hono';
import { changesRoutes } from './changes/routes';
import type { ServiceContext } from './context';
import { libraryRoutes } from './library/routes';
import { nothingThere } from './problems/nothing-there';
import { answerProblem } from './problems/problem-details';
import { later } from './requests/later';
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
    .route(
      '/settings',
      later('/api/settings', async () => (await import('./settings/routes')).settingsRoutes(context)),
    )
    .route(
      '/materials',
      later('/api/materials', async () => (await import('./materials/routes')).materialsRoutes(context)),
    )
    .route(
      '/searches',
      later('/api/searches', async () => (await import('./searches/routes')).searchesRoutes(context)),
    )
    .route(
      '/attachments',
      later('/api/attachments', async () =>
        (await import('./attachments/routes')).attachmentsRoutes(context),
      ),
    )
    .route(
      '/formulas',
      later('/api/formulas', async () => (await import('./formulas/routes')).formulasRoutes(context)),
    )
    .route(
      '/batches',
      later('/api/batches', async () => (await import('./batches/routes')).batchesRoutes(context)),
    )
    .route(
      '/find',
      later('/api/find', async () => (await import('./lists/find-routes')).findRoutes(context)),
    )
    .route(
      '/sheets',
      later('/api/sheets', async () => (await import('./sheets/routes')).sheetsRoutes(context)),
    )
    .route(
      '/emulsions',
      later('/api/emulsions', async () => (await import('./emulsions/routes')).emulsionsRoutes(context)),
    )
    .route(
      '/today',
      later('/api/today', async () => (await import('./today/routes')).todayRoutes(context)),
    )
    .route(
      '/trials',
      later('/api/trials', async () => (await import('./trials/routes')).trialsRoutes(context)),
    )
    .route(
      '/substances',
      later('/api/substances', async () => (await import('./substances/routes')).substancesRoutes(context)),
    )
    .route(
      '/limits',
      later('/api/limits', async () => (await import('./limits/routes')).limitsRoutes(context)),
    )
    .route(
      '/law',
      later('/api/law', async () => (await import('./limits/law-routes')).lawRoutes(context)),
    )
    .route(
      '/exports',
      later('/api/exports', async () => (await import('./exports/routes')).exportsRoutes(context)),
    )
    .route(
      '/look-alikes',
      later('/api/look-alikes', async () => (await import('./lookalikes/routes')).lookAlikeRoutes(context)),
    )
    .route(
      '/meetings',
      later('/api/meetings', async () => (await import('./meeting/routes')).meetingRoutes(context)),
    )
    .route(
      '/imports',
      later('/api/imports', async () => (await import('./imports/routes')).importsRoutes(context)),
    )
    .route(
      '/records',
      later('/api/records', async () => (await import('./record/routes')).recordRoutes(context)),
    );
  service.onError(answerProblem);
  service.notFound((c) => answerProblem(nothingThere(), c));
  return service;
}

/** The service's type: what the typed client of the screens is built on. */
export type Service = ReturnType<typeof createService>;
