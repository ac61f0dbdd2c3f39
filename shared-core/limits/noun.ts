import type { Noun } from '../record/noun';
import { LIMIT_FIELDS } from './fields';
import { storedLimit, type LimitContent } from './limit';

export const LIMIT: Noun<LimitContent> & { kind: 'limit' } = {
  kind: 'limit',
  name: 'limit',
  fields: LIMIT_FIELDS,
  read: (content) => storedLimit.parse(content),
  titleOf: ({ subject }) => subject,
  judgesVersions: true,
  upgraders: [],
};
