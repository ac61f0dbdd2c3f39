import type { make } from '../checks/build';

/** Names that a rule must know, and beside them those that look alike and are something else. */
export interface NamesOfKind {
  rule: (of: ReturnType<typeof make>) => boolean;
  knows: string[];
  not: string[];
}
