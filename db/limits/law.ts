import type { Law } from '@core/limits/law';
import type { Reader } from '../database';
import { readSubstances } from '../substances/substances';
import { readLimits } from './limits';

/** Everything that checks, label and exposure ask of substances and limits, at once. */
export function readLaw(db: Reader): Law {
  return { substances: readSubstances(db), limits: readLimits(db) };
}
