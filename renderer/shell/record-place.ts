import type { RecordKind } from '@core/record/change';
import type { RouteLocationRaw } from 'vue-router';

/** Where a record is edited; the first screen for a kind that has no screen of its own. */
export function recordPlace(kind: RecordKind, id: string): RouteLocationRaw {
  switch (kind) {
    case 'material':
    case 'formula':
    case 'batch':
    case 'substance':
    case 'limit':
      return { name: kind, params: { id } };
    case 'trial series':
      return { name: 'bench', query: { tool: 'trials', series: id } };
    case 'settings':
      return { name: 'settings' };
    default:
      return '/';
  }
}
