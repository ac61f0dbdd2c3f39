import type { SubstanceIndex } from '../substances/substance-index';
import type { Hansen } from './hansen';
import { publishedHansen } from './published-parameters';

/** Hansen parameters of a substance, with the radius of its sphere where one is known. MPa½ */
export interface KnownHansen extends Hansen {
  radius: number | null;
}

/**
 * The parameters that a written name goes by: as the library's table of substances has them, all three, else the
 * published ones; null where none are known.
 */
export function hansenOf(written: string, index: SubstanceIndex): KnownHansen | null {
  const own = index.find(written);
  if (own && own.hansenD !== null && own.hansenP !== null && own.hansenH !== null)
    return { d: own.hansenD, p: own.hansenP, h: own.hansenH, radius: own.hansenRadius };
  return publishedHansen(written) ?? (own && publishedHansen(own.name));
}
