import { RECORD_KINDS, type AnyRepository } from '@db/repositories';
import { found } from '../problems/found';

const BY_KIND = new Map(RECORD_KINDS.map(({ repository }) => [repository.noun.kind, repository]));

/** How the records of a kind are read and written. @throws Problem not-found for a kind there is none of */
export function repositoryOf(kind: string): AnyRepository {
  return found(BY_KIND.get(kind), 'kind of record');
}

/** The kinds whose records can be deleted and brought back. */
export const KINDS: readonly string[] = [...BY_KIND.keys()];
