import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { validBody } from '../problems/validated';
import { optimiseFromLibrary, optimiseRequest } from './optimise-request';
import { rankFromLibrary, systemsRequest } from './systems-request';

export function emulsionsRoutes(context: ServiceContext) {
  return new Hono()
    .post('/optimise', validBody(optimiseRequest), async (c) =>
      c.json(await optimiseFromLibrary(context, c.req.valid('json'), c.req.raw.signal)),
    )
    .post('/systems', validBody(systemsRequest), async (c) =>
      c.json(await rankFromLibrary(context, c.req.valid('json'), c.req.raw.signal)),
    );
}
