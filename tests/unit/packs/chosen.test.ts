import fc from 'fast-check';
import type { ExchangedRecord, LibraryDocument } from '@core/exchange/document';
import type { Material } from '@core/materials/material';
import { tradeNameKey } from '@core/materials/nested';
import { recordKey } from '@core/merging/choice';
import { withWhatTheyUse } from '@core/packs/chosen';
import { isPackFile, packManifest, packRequest } from '@core/packs/pack';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../checks/build';

type Held = Pick<LibraryDocument, 'records' | 'versions' | 'states'>;
const HASH = 'a'.repeat(64);

function record(kind: string, id: string, of: object): ExchangedRecord {
  const at = '2026-01-01T00:00:00.000Z';
  return {
    ...{ kind, id, revision: 1, createdAt: at, updatedAt: at, format: 1, state: HASH, past: [] },
    content: of as Record<string, unknown>,
  };
}
const ofMaterial = (one: Material): ExchangedRecord => record('material', one.id, one);
const formula = (id: string, ...of: Material[]): ExchangedRecord =>
  record('formula', id, content([phase(of.map((one) => [one, 1]))]));
const holding = (records: ExchangedRecord[], part: Partial<Held> = {}): Held => ({
  records,
  versions: [],
  states: [],
  ...part,
});
const keyOf = ({ id }: Material): string => recordKey('material', id);
const taken = (held: Held, chosen: string[]): string[] => [...withWhatTheyUse(held, chosen)].sort();

describe('what a pack takes along with what was chosen', () => {
  const oil = make('Almond Press', 'Prunus Amygdalus Dulcis Oil');
  const wax = make('Wax Pearls', 'Cera Alba');
  const blend = make('Balm Base', ['Almond Press', 'Wax Pearls']);
  const all = [oil, wax, blend].map(ofMaterial);

  it('is a formula’s materials, the blends within them, and nothing that it does not use', () => {
    const other = make('Not Used', 'Squalane');
    const balm = formula('f', blend);
    const held = holding([...all, ofMaterial(other), balm]);
    expect(taken(held, ['formula f'])).toEqual(['formula f', ...[oil, wax, blend].map(keyOf)].sort());
    expect(taken(held, [keyOf(oil)])).toEqual([keyOf(oil)]);
    expect(taken(held, [])).toEqual([]);
    expect(taken(held, ['formula gone'])).toEqual([]);
  });

  it('is no material whose trade name is the substance that it holds', () => {
    // A maker who calls the glycerin on the shelf “Glycerin” did not sell it within somebody's blend.
    const glycerin = make('Glycerin', 'Glycerin');
    const extract = make('Leaf Extract', ['Glycerin', 'Aqua']);
    const held = holding([glycerin, extract].map(ofMaterial));
    expect(taken(held, [keyOf(extract)])).toEqual([keyOf(extract)]);
  });

  it('is no material whose trade name a substance of the library bears, nor one of two of a name', () => {
    const named = make('Squalane', 'Olea Europaea Oil');
    const [squalane] = starterSubstances().filter(({ name }) => name === 'Glycerin');
    const substance = record('substance', nextId(), { ...squalane, name: 'Squalane' });
    const cream = make('Cream Base', ['Squalane', 'Aqua']);
    expect(taken(holding([...[named, cream].map(ofMaterial), substance]), [keyOf(cream)])).toEqual([
      keyOf(cream),
    ]);
    expect(taken(holding([named, cream].map(ofMaterial)), [keyOf(cream)])).toEqual(
      [keyOf(named), keyOf(cream)].sort(),
    );
    const twins = [make('Twin', 'Cera Alba'), make(' twin ', 'Aqua')];
    const both = make('Both', ['Twin', 'Squalane']);
    expect(taken(holding([...twins, both].map(ofMaterial)), [keyOf(both)])).toEqual([keyOf(both)]);
  });

  it('is what a recorded version was made of, though the formula holds it no longer', () => {
    const state = { hash: HASH, kind: 'material', record: wax.id, format: 1, content: {} };
    const version = {
      ...{ id: nextId(), formulaId: 'f', number: 1, recordedAt: '', recordedBy: '', reason: '' },
      ...{ formula: HASH, decisions: [], materials: [{ state: HASH, revision: 1 }] },
    };
    const held = holding([...all, formula('f', oil)], { versions: [version], states: [state] });
    expect(taken(held, ['formula f'])).toEqual(['formula f', keyOf(oil), keyOf(wax)].sort());
    expect(taken({ ...held, versions: [{ ...version, formulaId: 'g' }] }, ['formula f'])).not.toContain(
      keyOf(wax),
    );
  });

  it('ends where blends name each other, and is the same taken once more', () => {
    const names = ['A1', 'B2', 'C3', 'D4', 'E5'];
    const parts = fc.array(fc.subarray(names, { minLength: 1 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(parts, fc.nat(4), (compositions, from) => {
        const shelf = names.map((name, at) => make(name, compositions[at] ?? []));
        const held = holding(shelf.map(ofMaterial));
        const start = keyOf(shelf[from]!);
        const first = taken(held, [start]);
        expect(taken(held, first)).toEqual(first);
        // By hand: everything that can be reached by names, without what holds its own name.
        const ownName = (one: Material): boolean =>
          one.composition.some(({ inci }) => tradeNameKey(inci) === tradeNameKey(one.tradeName));
        const reached = new Set([shelf[from]!]);
        for (const one of reached)
          for (const { inci } of one.composition) {
            const next = shelf[names.indexOf(inci)]!;
            if (!ownName(next)) reached.add(next);
          }
        expect(first).toEqual([...reached].map(keyOf).sort());
      }),
    );
  });
});

describe('what a pack may hold', () => {
  const sha = '0123456789abcdef'.repeat(4);

  it.each([
    ['pack.json', true],
    ['library.json', true],
    ['schema.json', true],
    [`attachments/${sha}`, true],
    [`attachments/${sha}.pdf`, false],
    [`attachments/${sha.toUpperCase()}`, false],
    [`attachments/../${sha}`, false],
    [`/attachments/${sha}`, false],
    ['../library.json', false],
    ['library.sqlite', false],
    ['', false],
  ])('the file “%s”: %s', (path, may) => expect(isPackFile(path)).toBe(may));

  const manifest = {
    ...{ stillroom: 'pack', format: 1, title: 'Balms', madeAt: '2026-11-29T08:00:00Z', by: '' },
    ...{ library: { id: 'l', name: 'Ours' }, files: [{ path: 'library.json', sha256: sha, bytes: 12 }] },
    seal: sha,
  };

  it.each([
    ['a file outside of it', { files: [{ path: '../evil', sha256: sha, bytes: 1 }] }],
    ['a file of less than nothing', { files: [{ path: 'library.json', sha256: sha, bytes: -1 }] }],
    ['a seal that is no hash', { seal: 'open' }],
    ['another kind of file', { stillroom: 'library' }],
    ['a format that never was', { format: 0 }],
    ['a day that is none', { madeAt: 'yesterday' }],
  ])('is refused with %s', (_, part) => {
    expect(packManifest.safeParse(manifest).success).toBe(true);
    expect(packManifest.safeParse({ ...manifest, ...part }).success).toBe(false);
  });

  it('is asked for by a title, by records that are named by their ids, and in one of two forms', () => {
    const asked = {
      ...{ title: 'For the class', materials: [nextId()], formulas: [] },
      ...{ withSuppliers: false, withBatches: false, format: 'pack' },
    };
    expect(packRequest.safeParse(asked).success).toBe(true);
    const refused = (part: object): string =>
      packRequest.safeParse({ ...asked, ...part }).error?.issues[0]?.message ?? '';
    expect(refused({ title: '  ' })).toBe('Give what it is called.');
    expect(refused({ materials: ['one'] })).not.toBe('');
    expect(refused({ format: 'zip' })).not.toBe('');
    // Whether prices go along is never taken for granted.
    expect(refused({ withSuppliers: undefined })).not.toBe('');
  });
});
