import type { Noun } from '../record/noun';
import { MATERIAL_FIELDS } from './fields';
import { storedContent, type MaterialContent } from './material';

export const MATERIAL: Noun<MaterialContent> = {
  kind: 'material',
  name: 'raw material',
  fields: MATERIAL_FIELDS,
  read: (content) => storedContent.parse(content),
  titleOf: ({ tradeName }) => tradeName,
  upgraders: [],
};
