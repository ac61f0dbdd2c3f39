import { calculate } from '@core/calculators/calculation';
import { materialsOf, type CalculationRequest } from '@core/calculators/calculation-request';
import { readMaterials } from '@db/materials/materials';
import { kindOfSheet } from './kind';
import type { MaterialsById } from './materials-by-id';

interface Subject {
  calculation: CalculationRequest;
  materials: MaterialsById;
}

export const calculation = kindOfSheet<'calculation', Subject>('calculation', {
  read(library, request) {
    const known = readMaterials(library, materialsOf(request.calculation));
    const { title } = calculate(request.calculation, known);
    return {
      subject: { calculation: request.calculation, materials: Object.fromEntries(known) },
      name: [title],
    };
  },
  async setting() {
    const { setCalculation } = await import('../set-calculation');
    return (subject, settings, printedAt) =>
      setCalculation(subject.calculation, subject.materials, settings, printedAt);
  },
});
