import type { Material } from '../materials/material';

/** A pH range, ends included; equal ends for one pH. */
export interface PhRange {
  low: number;
  high: number;
}

/** Below this pH soap begins to turn back into acid. */
const SOAP_WEAKENS = 8;
/** Below this pH so much of it is acid that it no longer carries an emulsion. Common practice, no source. */
export const SOAP_FAILS = 7;

/** Whether a pH range leaves the window in which a material works, as recorded; false where none is recorded. */
export function outsideWorkingPh({ figures }: Pick<Material, 'figures'>, { low, high }: PhRange): boolean {
  const window = figures.workingPh;
  if (!window) return false;
  return (window.low !== null && low < window.low) || (window.high !== null && high > window.high);
}

/** What a pH range does to soap: how strongly it is weakened, 0 to 1, and whether it fails; null from pH 8 on. */
export function soapAtPh({ low }: PhRange): { strength: number; fails: boolean } | null {
  if (low >= SOAP_WEAKENS) return null;
  return { strength: Math.min(1, (SOAP_WEAKENS - low) / 2), fails: low < SOAP_FAILS };
}
