import type { MarketRegion } from '../../products/product-kinds';
import { EXAMPLE } from '../fields';
import { blankLimit, type LimitContent } from '../limit';

type Said = Partial<Omit<LimitContent, 'subject' | 'percent' | 'checked' | 'source' | 'asOf'>>;

/** Whose text a limit comes from: what is recalled and not read at a dated text says so. */
export interface TextOfLaw {
  source: string;
  asOf: string;
  regions: MarketRegion[];
}

/** What was recalled, and not held against a dated text. */
export const UNDATED = 'not read at a dated text';

const BOTH: MarketRegion[] = ['EU', 'Great Britain'];
const COSMETICS = 'Regulation (EC) No 1223/2009';

/** An entry of an annex that Great Britain took over as it stood at the end of 2020. */
export function annex(number: string, entry: string, asOf: string = UNDATED): TextOfLaw {
  return { source: `${COSMETICS}, Annex ${number}, entry ${entry}`, asOf, regions: BOTH };
}

/** An entry of an annex as a later regulation of the European Union changed it. */
export function amended(number: string, entry: string, by: string, asOf: string = UNDATED): TextOfLaw {
  return { source: `${COSMETICS}, Annex ${number}, entry ${entry}, by (EU) ${by}`, asOf, regions: ['EU'] };
}

/** An example limit: so much of it, in per cent of the product; null where the rule asks no share. */
export function example(
  subject: string,
  percent: number | null,
  text: TextOfLaw,
  said: Said = {},
): LimitContent {
  return { ...blankLimit(subject), percent, ...text, checked: EXAMPLE, ...said };
}

/** Not at all, for what the entry leaves out. */
export function notAtAll(subject: string, text: TextOfLaw, said: Said = {}): LimitContent {
  return example(subject, null, text, { rule: 'prohibited', ...said });
}
