import { createHash } from 'node:crypto';
import * as vocabulary from '@core/materials/vocabulary';
import { migrations } from '@db/migrations/list';
import { describe, expect, it } from 'vitest';

/** The SHA-256 of every migration that a library of ours may have been made with. Add lines; never change one. */
const SHIPPED = [
  '0aabcd31793bf62e4cd5dcbfa3dcc604ded6119d5e3d4c7ddca272ec9f667e67',
  'ef990e3c92432dd80e48ac7aff4883fd08bc3a856e41955cd7187e68389870c4',
];

describe('the library’s schema', () => {
  it('migrations only ever grow: those shipped are as they were', () => {
    const hashes = migrations.map(({ sql }) => createHash('sha256').update(sql).digest('hex'));
    expect(hashes.slice(0, SHIPPED.length)).toEqual(SHIPPED);
    expect(migrations.map(({ number }) => number)).toEqual(migrations.map((_, index) => index + 1));
  });

  it('takes every word that the vocabulary offers where a column lists its words', () => {
    const sql = migrations.map((migration) => migration.sql).join('\n');
    const {
      CHARGES,
      ARCHITECTURES,
      FORMS,
      CONSISTENCIES,
      ORIGINS,
      STATUSES,
      EMULSION_TYPES,
      PHASES_OF_USE,
      PROVENANCES,
    } = vocabulary;
    const lists = {
      charge: CHARGES,
      architecture: ARCHITECTURES,
      form: FORMS,
      consistency: CONSISTENCIES,
      origin: ORIGINS,
      status: STATUSES,
      emulsion_type: EMULSION_TYPES,
      phase_of_use: PHASES_OF_USE,
      usage_provenance: PROVENANCES,
    };
    for (const [column, words] of Object.entries(lists)) {
      const allowed = new RegExp(`CHECK \\(${column} IN \\(([^)]*)\\)`).exec(sql)?.[1] ?? '';
      expect(allowed.split(', ').map((word) => word.slice(1, -1))).toEqual([...words]);
    }
  });
});
