import type { Relation } from '@core/merging/ancestry';
import type { Choice } from '@core/merging/choice';

/** How a record stands, told from here. */
export const RELATION_WORDS: Readonly<Record<Relation, string>> = {
  new: 'new here',
  'deleted here': 'deleted here',
  'theirs newer': 'newer there',
  'both changed': 'changed on both sides',
  'ours newer': 'newer here',
  same: 'the same',
  'only here': 'only here',
};

export const CHOICE_WORDS: Readonly<Record<Choice, string>> = {
  leave: 'leave as it is here',
  theirs: 'take as it is there',
  'both, ours first': 'merge; ours where both changed',
  'both, theirs first': 'merge; theirs where both changed',
};

/** A backup holds what was here: taking from it is taking back. */
export const BACKUP_RELATION_WORDS: Readonly<Record<Relation, string>> = {
  ...RELATION_WORDS,
  new: 'gone since',
  'deleted here': 'deleted since',
  'theirs newer': 'newer in the backup',
  'both changed': 'changed since',
  'ours newer': 'changed since',
  'only here': 'added since',
};
