import type { AcidStrength } from '../neutralisation/neutralise';
import { between } from '../working/inputs';
import { entered } from './calculated';
import type { NeutraliseRequest } from './neutralise-request';

/** Mass of acid in 100 parts of formula; an acid value already tells of the material as weighed. */
export function acidMass(request: NeutraliseRequest): number {
  const percent = between(
    entered(request.acidPercent, 'Level of the acid', 'Level of the acid'),
    0,
    100,
    'Level of the acid',
    '%',
  );
  if (request.acidKnownBy === 'acid value') return percent;
  const active = entered(request.acidActivePercent, 'Acid in what is weighed', 'Acid in what is weighed');
  return (percent * between(active, 0, 100, 'Acid in what is weighed', '%')) / 100;
}

/** @throws Problem `invalid-input` for what is not entered yet */
export function strength(request: NeutraliseRequest): AcidStrength {
  if (request.acidKnownBy === 'acid value')
    return { acidValue: entered(request.acidValue, 'Acid value', 'Acid value') };
  return {
    molarMass: entered(request.acidMolarMass, 'Molar mass of the acid', 'Molar mass of the acid'),
    equivalents: entered(request.acidEquivalents, 'Acid groups per molecule', 'Acid groups per molecule'),
  };
}
