import type { RouteLocationRaw } from 'vue-router';

/** Something that the palette found, and where it is. */
export interface Finding {
  key: string;
  says: string;
  what: string;
  to: RouteLocationRaw;
  keys?: string;
}
