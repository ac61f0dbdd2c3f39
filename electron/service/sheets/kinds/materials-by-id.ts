import type { Material } from '@core/materials/material';
import type { OpenLibrary } from '@db/library/open-library';
import { readMaterial } from '@db/materials/materials';
import { found } from '../../problems/found';

export type MaterialsById = Record<string, Material>;

/** Every one of the materials. @throws Problem `not-found` when one is not in the library */
export function everyMaterial(library: OpenLibrary, ids: readonly string[]): MaterialsById {
  return Object.fromEntries(
    [...new Set(ids)].map((id) => [id, found(readMaterial(library, id), 'raw material')]),
  );
}
