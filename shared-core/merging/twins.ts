import { limitKey } from '../limits/limit-key';
import type { LimitContent } from '../limits/limit';
import { nameKey } from '../substances/names';

/**
 * What makes records of two libraries the same thing although each was begun by itself, such as the examples that every
 * library starts with: by kind, from their content. Kinds that are not named here go by their identifier alone.
 */
const TWIN_KEYS: Readonly<Record<string, (content: object) => string>> = {
  substance: (content) => nameKey((content as { name: string }).name),
  limit: (content) => limitKey(content as LimitContent),
  'saved search': (content) => JSON.stringify(content),
};

/** The key by which a record is known in another library; null where only its identifier tells. */
export function twinKey(kind: string, content: object): string | null {
  return TWIN_KEYS[kind]?.(content) ?? null;
}
