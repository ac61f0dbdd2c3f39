import { materialsOf, type CalculationRequest } from '@core/calculators/calculation-request';
import { readMaterials } from '@db/materials/materials';
import { kindOfSheet } from './kind';
import type { MaterialsById } from './materials-by-id';

interface Subject {
  calculation: CalculationRequest;
  materials: MaterialsById;
}

export const calculation = kindOfSheet<'calculation', Subject>('calculation', {
  async read(library, request) {
    // What reads structures takes its time to load, and a host that starts has none of it to spare.
    const { calculate } = await import('@core/calculators/calculation');
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
