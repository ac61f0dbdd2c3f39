import { Hono, type MiddlewareHandler } from 'hono';
import { rendererFiles } from './renderer-files';
import { withSecurityHeaders } from './response-headers';

/** What answers requests: the service, or a double of it in a test. */
export interface RequestHandler {
  fetch(request: Request): Response | Promise<Response>;
}

export interface Hosted {
  /** Answers everything under `/api/`. */
  service: RequestHandler;
  /** The folder of the built page. */
  rendererFolder: string;
  /** Who may ask at all; each host has its own. */
  gate: MiddlewareHandler;
}

/** The service and the page behind a host's gate, with the security headers on every answer. */
export function hostedApp({ service, rendererFolder, gate }: Hosted): Hono {
  const app = new Hono();
  app.use(withSecurityHeaders());
  app.use(gate);
  app.all('/api/*', (c) => service.fetch(c.req.raw));
  app.all('*', rendererFiles(rendererFolder));
  return app;
}
