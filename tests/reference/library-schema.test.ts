import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { librarySchema } from '@core/exchange/schema';
import { demoLibrary } from '@core/demo/demo-library';
import { writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import { insertBatch } from '@db/batches/batches';
import { materials } from '@db/materials/materials';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { documentOf, edit, emptyLibrary } from '../unit/merging/two-libraries';

/* A library as a document, held against its published schema by an independent validator: Ajv, JSON Schema draft 2020-12. */

const PUBLISHED = join(import.meta.dirname, '../../shared-core/exchange/library.schema.json');

const validator = () =>
  new Ajv2020({ strict: false, validateFormats: false, allErrors: false }).compile(librarySchema());

async function demonstration() {
  const engine = await emptyLibrary();
  const demo = demoLibrary();
  engine.control('BEGIN');
  for (const one of demo.materials) materials.insert(engine, one);
  for (const one of demo.formulas) writeFormula(engine, one);
  for (const one of demo.versions) insertVersion(engine, one);
  for (const one of demo.batches) insertBatch(engine, one);
  engine.control('COMMIT');
  edit(engine, 'material', demo.materials[0]!.id, { notes: 'later' });
  return documentOf(engine);
}

describe('the published schema of a library as a document', () => {
  it('is the one that the fields make: run with STILLROOM_WRITE_SCHEMA=1 to publish it anew', async () => {
    const made = JSON.parse(JSON.stringify(librarySchema())) as unknown;
    if (process.env.STILLROOM_WRITE_SCHEMA) {
      const { writeFileSync } = await import('node:fs');
      writeFileSync(PUBLISHED, `${JSON.stringify(made, null, 2)}\n`);
    }
    expect(JSON.parse(readFileSync(PUBLISHED, 'utf8'))).toEqual(made);
  });

  it('admits the demonstration, with its history, versions and batches', async () => {
    const validate = validator();
    const document = JSON.parse(JSON.stringify(await demonstration()));
    expect(validate(document), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  });

  it('refuses a share beyond the whole, a word that is none, a state that is no hash, another format', async () => {
    const validate = validator();
    const document = JSON.parse(JSON.stringify(await demonstration()));
    const at = document.records.findIndex(({ kind }: { kind: string }) => kind === 'material');
    const changed = (change: (all: typeof document) => void): boolean => {
      const copy = structuredClone(document);
      change(copy);
      return validate(copy);
    };
    expect(changed((all) => (all.records[at].content.composition[0].lowPpm = 2_000_000))).toBe(false);
    expect(changed((all) => (all.records[at].content.charge = 'ionic'))).toBe(false);
    expect(changed((all) => (all.records[at].state = 'x'))).toBe(false);
    expect(changed((all) => (all.format = 2))).toBe(false);
    expect(changed(() => undefined)).toBe(true);
  });
});
