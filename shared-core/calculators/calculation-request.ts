import { z } from 'zod';
import { hlbRequest } from './hlb-request';
import { hldRequest } from './hld-request';
import { neutraliseRequest } from './neutralise-request';
import { preserveRequest } from './preserve-request';
import { formRequest } from './form-calculation';

/** What a calculator was given; whoever shows or prints its answer computes it anew from this. */
export const calculationRequest = z.discriminatedUnion('of', [
  hlbRequest,
  hldRequest,
  neutraliseRequest,
  preserveRequest,
  formRequest,
]);
export type CalculationRequest = z.infer<typeof calculationRequest>;

/** The materials that a calculation reads from the library. */
export function materialsOf(request: CalculationRequest): string[] {
  const ids =
    request.of === 'hlb'
      ? [request.knownMaterialId]
      : request.of === 'hld'
        ? [...request.oils, ...request.surfactants].map((line) => line.materialId)
        : request.of === 'preserve'
          ? [request.materialId]
          : [];
  return ids.filter((id) => id !== null);
}
