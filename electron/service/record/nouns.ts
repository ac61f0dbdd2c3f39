import { formulaRecords } from '@db/formulas/drafts';
import { limitRecords } from '@db/limits/limits';
import { materialRecords } from '@db/materials/materials';
import type { Kept } from '@db/record/record-table';
import type { Repository } from '@db/record/repository';
import { searchRecords } from '@db/searches/searches';
import { substanceRecords } from '@db/substances/substances';
import { seriesRecords } from '@db/trials/trials';
import { found } from '../problems/found';

type AnyRepository = Repository<Kept, object>;

const REPOSITORIES: readonly AnyRepository[] = [
  materialRecords,
  formulaRecords,
  seriesRecords,
  searchRecords,
  substanceRecords,
  limitRecords,
];
const BY_KIND = new Map(REPOSITORIES.map((repository) => [repository.noun.kind, repository]));

/** How the records of a kind are read and written. @throws Problem not-found for a kind there is none of */
export function repositoryOf(kind: string): AnyRepository {
  return found(BY_KIND.get(kind), 'kind of record');
}

/** The kinds whose records can be deleted and brought back. */
export const KINDS: readonly string[] = [...BY_KIND.keys()];
