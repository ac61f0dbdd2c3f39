import type { ServiceContext as Context } from './context';

/** How the routes of each room are had: loaded by the first request for one of them. */
export const ROOMS = {
  settings: async (of: Context) => (await import('./settings/routes')).settingsRoutes(of),
  materials: async (of: Context) => (await import('./materials/routes')).materialsRoutes(of),
  searches: async (of: Context) => (await import('./searches/routes')).searchesRoutes(of),
  attachments: async (of: Context) => (await import('./attachments/routes')).attachmentsRoutes(of),
  formulas: async (of: Context) => (await import('./formulas/routes')).formulasRoutes(of),
  batches: async (of: Context) => (await import('./batches/routes')).batchesRoutes(of),
  find: async (of: Context) => (await import('./lists/find-routes')).findRoutes(of),
  sheets: async (of: Context) => (await import('./sheets/routes')).sheetsRoutes(of),
  emulsions: async (of: Context) => (await import('./emulsions/routes')).emulsionsRoutes(of),
  today: async (of: Context) => (await import('./today/routes')).todayRoutes(of),
  trials: async (of: Context) => (await import('./trials/routes')).trialsRoutes(of),
  substances: async (of: Context) => (await import('./substances/routes')).substancesRoutes(of),
  limits: async (of: Context) => (await import('./limits/routes')).limitsRoutes(of),
  law: async (of: Context) => (await import('./limits/law-routes')).lawRoutes(of),
  exports: async (of: Context) => (await import('./exports/routes')).exportsRoutes(of),
  lookAlikes: async (of: Context) => (await import('./lookalikes/routes')).lookAlikeRoutes(of),
  meetings: async (of: Context) => (await import('./meeting/routes')).meetingRoutes(of),
  imports: async (of: Context) => (await import('./imports/routes')).importsRoutes(of),
  records: async (of: Context) => (await import('./record/routes')).recordRoutes(of),
};
