import type { Noun } from '../record/noun';
import { SUBSTANCE_FIELDS } from './fields';
import { storedSubstance, type SubstanceContent } from './substance';

export const SUBSTANCE: Noun<SubstanceContent> & { kind: 'substance' } = {
  kind: 'substance',
  name: 'substance',
  fields: SUBSTANCE_FIELDS,
  read: (content) => storedSubstance.parse(content),
  titleOf: ({ name }) => name,
  judgesVersions: true,
  upgraders: [],
};
