import { Hono } from 'hono';
import type { ServiceContext } from '../context';

export function sheetsRoutes(_context: ServiceContext) {
  return new Hono();
}
