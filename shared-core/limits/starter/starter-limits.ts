import type { LimitContent } from '../limit';
import { COLORANT_LIMITS } from './colorants-and-chemicals';
import { PRESERVATIVE_LIMITS } from './preservatives';
import { RESTRICTED_LIMITS } from './restricted';
import { US_LIMITS } from './united-states';
import { UV_FILTER_LIMITS } from './uv-filters';

/** Limits as examples, each to be checked against the law in force. */
export const STARTER_LIMITS: readonly LimitContent[] = [
  ...PRESERVATIVE_LIMITS,
  ...UV_FILTER_LIMITS,
  ...RESTRICTED_LIMITS,
  ...COLORANT_LIMITS,
  ...US_LIMITS,
];
