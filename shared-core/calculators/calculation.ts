import type { Calculated } from './calculated';
import type { CalculationRequest } from './calculation-request';
import { calculateForm } from './form-calculation';
import { calculateHlb } from './hlb';
import { calculateHld } from './hld';
import type { Library } from './mixes';
import { calculateNeutralise } from './neutralise';
import { calculatePreserve } from './preserve';

/**
 * Computes whatever calculation is asked for, from its inputs and the library.
 *
 * @throws Problem `invalid-input`
 */
export function calculate(request: CalculationRequest, library: Library): Calculated {
  switch (request.of) {
    case 'hlb':
      return calculateHlb(request, library);
    case 'hld':
      return calculateHld(request, library);
    case 'neutralise':
      return calculateNeutralise(request);
    case 'preserve':
      return calculatePreserve(request, library);
    case 'form':
      return calculateForm(request);
  }
}
