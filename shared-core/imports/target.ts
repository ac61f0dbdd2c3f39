import type { Shape } from '../record/field';

/** How a cell is read for what it fills. */
export type Reading =
  | Shape
  /** A figure with its spread: one number, a range, or a bound. */
  | { kind: 'figure'; unit: string; digits: number; min: number; max: number }
  /** INCI names, several in a cell, with their shares where they are told. */
  | { kind: 'names' }
  /** The share of the INCI name in the same row. */
  | { kind: 'part share' }
  /** A share of a formula in per cent, or the mark of the q.s. line. */
  | { kind: 'amount' }
  | { kind: 'mass' | 'money' | 'currency' | 'date' };

/** What a column of a maker's table can fill: a property of a material, or a part of one. */
export interface Target {
  /** `tradeName`, `storage.minC`, `figures.hlb`, `offer.supplier`. */
  key: string;
  label: string;
  reading: Reading;
}

/** The unit that a column of it is read in; empty where there is none. */
export function unitOf({ reading }: Target): string {
  if (reading.kind === 'part share' || reading.kind === 'amount') return '%';
  if (reading.kind === 'mass') return 'kg';
  return 'unit' in reading ? reading.unit : '';
}
