import type { Material } from '@core/materials/material';
import { readMaterial } from '@db/materials/materials';
import type { ServiceContext } from '../../context';
import { found } from '../../problems/found';

export type MaterialsById = Record<string, Material>;

/** Every one of the materials. @throws Problem `not-found` when one is not in the library */
export function everyMaterial(context: ServiceContext, ids: readonly string[]): MaterialsById {
  const { library } = context.session.current();
  return Object.fromEntries(
    [...new Set(ids)].map((id) => [id, found(readMaterial(library, id), 'raw material')]),
  );
}
