import type { FormulaSide } from '@core/formulas/change/consequences';
import { formulaContent } from '@core/formulas/formula';
import { answer, service } from '../service/client';
import { DRAFT_SIDE } from './versions';

/** A formula's draft or one of its versions, as one side of a comparison. */
export interface NamedSide extends FormulaSide {
  name: string;
}

/** Fetches one side. @param versionId a version's id, or the word for the draft */
export async function fetchSide(formulaId: string, versionId: string): Promise<NamedSide> {
  if (versionId === DRAFT_SIDE) {
    const { formula, materials } = await answer(service.formulas[':id'].$get({ param: { id: formulaId } }));
    return { name: `${formula.name}, draft`, content: formulaContent.parse(formula), materials };
  }
  const version = await answer(service.formulas.versions[':versionId'].$get({ param: { versionId } }));
  const { content, materials, number } = version;
  return { name: `${content.name}, version ${number}`, content, materials };
}
