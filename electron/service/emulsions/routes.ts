import { Hono } from 'hono';
import type { ServiceContext } from '../context';

export function emulsionsRoutes(_context: ServiceContext) {
  return new Hono();
}
