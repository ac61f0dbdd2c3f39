import { between, nonNegative, positive, badInput } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

export const ISO_16128: Source = { text: 'ISO 16128-1:2016 and ISO 16128-2:2017', basis: 'memory' };

/** Natural origin index of an ingredient: mass of natural origin over the whole, such as by molar mass of its parts. */
export function naturalOriginIndex(naturalMass: number, totalMass: number): Worked {
  nonNegative(naturalMass, 'The natural mass');
  positive(totalMass, 'The whole mass');
  if (naturalMass > totalMass)
    throw badInput(
      'The mass of natural origin is more than the whole.',
      'Check which of the two is which.',
      'naturalMass',
    );
  return oneStep(
    {
      says: 'natural origin index: mass of natural origin / whole mass',
      shows: `${show(naturalMass)} / ${show(totalMass)}`,
      result: naturalMass / totalMass,
      unit: '',
    },
    [ISO_16128],
    naturalMass / totalMass <= 0.5 && naturalMass > 0
      ? [
          'At half or less an ingredient does not count as derived from nature: its index is then taken as 0. Exactly half is unsettled.',
        ]
      : [],
  );
}

/** A part of a product: its share in % and its index from 0 to 1. */
export interface OriginShare {
  percent: number;
  index: number;
  /** Water added as such, which the figure may be given without. */
  formulationWater: boolean;
}

/**
 * Natural origin content of a product: Σ share × index, with formulation water, or without it in both sums.
 * @returns %
 * @throws Problem `invalid-input` where nothing but formulation water is left, or an index is not from 0 to 1
 * Source: ISO 16128-2:2017.
 */
export function naturalOriginContent(parts: readonly OriginShare[], countFormulationWater: boolean): Worked {
  const counted = parts.filter(({ formulationWater }) => countFormulationWater || !formulationWater);
  for (const { percent, index } of counted) {
    nonNegative(percent, 'A share');
    between(index, 0, 1, 'An index');
  }
  const whole = counted.reduce((sum, { percent }) => sum + percent, 0);
  positive(
    whole,
    countFormulationWater ? 'The whole of the shares' : 'What is left without formulation water',
  );
  const natural = counted.reduce((sum, { percent, index }) => sum + percent * index, 0);
  return oneStep(
    {
      says: countFormulationWater
        ? 'natural origin content: 100 × Σ share × index / Σ share'
        : 'natural origin content without formulation water: 100 × Σ share × index / Σ share, water left out of both',
      shows: `100 × (${counted.map(({ percent, index }) => `${show(percent)} × ${show(index)}`).join(' + ')}) / ${show(whole)}`,
      result: (100 * natural) / whole,
      unit: '%',
    },
    [ISO_16128],
  );
}
