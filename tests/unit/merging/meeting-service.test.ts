import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { ListPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { blankMaterial, type Material } from '@core/materials/material';
import { readPack } from '@db/packs/read-pack';
import { composeService } from '@service/compose';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';

type Of = Awaited<ReturnType<typeof serviceWith>>;

const NONE = { rules: {}, records: {} };

async function bytesFrom(of: Of, path: string, body: unknown): Promise<Uint8Array> {
  const response = await of.service.request(`/api${path}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(response.status).toBe(200);
  return new Uint8Array(await response.arrayBuffer());
}

interface Met {
  id: string;
  relations: Record<string, number>;
  title: string;
}

async function meetFile(of: Of, bytes: Uint8Array) {
  const response = await of.service.request('/api/meetings/file?name=x', {
    method: 'POST',
    body: new Uint8Array(bytes),
  });
  return { status: response.status, body: (await response.json()) as Met & { title: string; code: string } };
}

const materialsOf = async ({ ask }: Of, query = 'limit=500') =>
  (await ask<ListPage<MaterialRow>>('GET', `/materials?${query}`)).body.rows;

async function change({ ask }: Of, id: string, part: Partial<Material>): Promise<void> {
  const { body: was } = await ask<Material>('GET', `/materials/${id}`);
  const { id: _i, revision, createdAt: _c, updatedAt: _u, ...content } = was;
  const answer = await ask('PUT', `/materials/${id}`, { revision, content: { ...content, ...part } });
  expect(answer.status).toBe(200);
}

const packOf = (of: Of, materials: string[], more: object = {}) =>
  bytesFrom(of, '/exports/pack', {
    ...{ title: 'Spring', materials, formulas: [], withSuppliers: false, withBatches: false, format: 'pack' },
    ...more,
  });

describe('a pack', () => {
  it('goes out without suppliers, comes back changed, and merges with one real clash', async () => {
    const ours = await serviceWith('demonstration');
    const theirs = await serviceWith('empty');
    const rows = await materialsOf(ours);
    const ids = rows.slice(0, 3).map(({ id }) => id);
    const pack = await packOf(ours, ids);
    expect(strFromU8(unzipSync(pack)['library.json']!)).not.toContain('"priceMinor"');

    // Taken in there: what it holds is new.
    const first = await meetFile(theirs, pack);
    expect(first.body.relations).toMatchObject({ new: expect.any(Number), 'both changed': 0 });
    await theirs.ask('POST', `/meetings/${first.body.id}/apply`, NONE);
    expect(await materialsOf(theirs)).toHaveLength(first.body.relations.new!);
    expect((await meetFile(theirs, pack)).body.relations).toMatchObject({ new: 0, 'theirs newer': 0 });

    // Both go on; it comes back.
    await change(theirs, ids[0]!, { notes: 'theirs', appearance: 'pale' });
    await change(ours, ids[0]!, { notes: 'ours' });
    await change(theirs, ids[1]!, { notes: 'theirs' });
    const back = await meetFile(ours, await packOf(theirs, ids));
    expect(back.body.relations).toMatchObject({ 'both changed': 1, 'theirs newer': 1, new: 0 });
    const fields = (
      await ours.ask<{ label: string; clash: boolean }[]>(
        'GET',
        `/meetings/${back.body.id}/fields?key=${encodeURIComponent(`material ${ids[0]}`)}`,
      )
    ).body;
    expect(fields.map(({ label, clash }) => [label, clash])).toEqual([
      ['Appearance', false],
      ['Notes', true],
    ]);
    const { body: offered } = await ours.ask<Material>('GET', `/materials/${ids[1]}`);
    const { body: done } = await ours.ask<{ merged: object; written: boolean }>(
      'POST',
      `/meetings/${back.body.id}/apply`,
      NONE,
    );
    expect(done).toMatchObject({ written: true, merged: { added: 0, changed: 2 } });
    expect((await ours.ask<Material>('GET', `/materials/${ids[0]}`)).body).toMatchObject({
      notes: 'ours',
      appearance: 'pale',
    });
    // What was withheld stays as it was.
    expect((await ours.ask<Material>('GET', `/materials/${ids[1]}`)).body).toMatchObject({
      notes: 'theirs',
      offers: offered.offers,
    });
  });

  it('is refused where it was altered, is from a newer version, or leaves its folder', async () => {
    const of = await serviceWith('demonstration');
    const [row] = await materialsOf(of);
    const files = unzipSync(await packOf(of, [row!.id]));
    const repacked = async (change: Record<string, Uint8Array>) =>
      (await meetFile(of, zipSync({ ...files, ...change }))).body.title;
    const library = strFromU8(files['library.json']!);
    expect(await repacked({ 'library.json': strToU8(library.replace(row!.tradeName, 'Other')) })).toBe(
      'This pack was altered after it was made.',
    );
    const first = JSON.parse(strFromU8(files['pack.json']!)) as { format: number; title: string };
    expect(await repacked({ 'pack.json': strToU8(JSON.stringify({ ...first, title: 'x' })) })).toBe(
      'This pack was altered after it was made.',
    );
    expect(await repacked({ 'pack.json': strToU8(JSON.stringify({ ...first, format: 2 })) })).toBe(
      'This pack was made by a newer version of Stillroom.',
    );
    expect(await repacked({ '../out.txt': strToU8('x') })).toBe(
      'This pack names a file outside of its own folder.',
    );
    expect(await repacked({ 'attachments/x.svg': strToU8('<svg onload=""/>') })).toBe(
      'This pack holds a file that no pack has.',
    );
    expect((await meetFile(of, strToU8('{"a":1}'))).body.title).toBe(
      'This file cannot be read as a Stillroom library or pack.',
    );
    expect((await meetFile(of, (await packOf(of, [row!.id])).slice(0, 2000))).body.title).toBe(
      'This pack is damaged and cannot be read.',
    );
  });

  it('brings its pictures and papers along', async () => {
    const [ours, theirs] = [await serviceWith('demonstration'), await serviceWith('empty')];
    const all = await Promise.all(
      (await materialsOf(ours)).map(
        async ({ id }) => (await ours.ask<Material>('GET', `/materials/${id}`)).body,
      ),
    );
    const filed = all.find(({ documents }) => documents.length > 0)!;
    const pack = await packOf(ours, [filed.id], { withSuppliers: true });
    expect(readPack(pack).attachment(filed.documents[0]!.sha256)).toBeDefined();
    const { body } = await meetFile(theirs, pack);
    await theirs.ask('POST', `/meetings/${body.id}/apply`, NONE);
    const got = await theirs.session.current().library.attachments.get(filed.documents[0]!.sha256);
    expect(got.length).toBe(filed.documents[0]!.bytes);
  });

  it('is opened beside ours as a library of its own', async () => {
    const of = await serviceWith('demonstration');
    const ids = (await materialsOf(of)).slice(0, 4).map(({ id }) => id);
    const { body } = await meetFile(of, await packOf(of, ids));
    expect((await of.ask('POST', `/meetings/${body.id}/beside`, { name: 'Spring pack' })).status).toBe(204);
    expect(of.session.current().library.folder).toBe(join(of.folder, 'documents', 'Spring pack'));
    expect((await materialsOf(of)).map(({ id }) => id).sort()).toEqual([...ids].sort());
  });
});

describe('another library', () => {
  it('is merged as a whole, and taken back as one', async () => {
    const of = await serviceWith('demonstration');
    const other = composeService({ documents: join(of.folder, 'else'), config: join(of.folder, 'c2') });
    await other.session.create(join(of.folder, 'else', 'North Bench'), 'empty');
    const made = await other.service.request('/api/materials', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(blankMaterial('Larkspur Wax', 'Cetyl Alcohol')),
    });
    expect(made.status).toBe(201);
    await other.session.close();
    const before = await materialsOf(of);
    const token = of.session.places.offer(join(of.folder, 'else', 'North Bench'));
    const { body: met } = await of.ask<Met>('POST', '/meetings/library', { token });
    expect(met.relations).toMatchObject({ new: 1, 'both changed': 0 });
    const { body: done } = await of.ask('POST', `/meetings/${met.id}/apply`, NONE);
    expect(done).toMatchObject({ written: true, merged: { added: 1, changed: 0 } });
    expect(await materialsOf(of)).toHaveLength(before.length + 1);
    expect((await of.ask('POST', '/meetings/take-back')).status).toBe(204);
    expect(await materialsOf(of)).toEqual(before);
    expect((await of.ask('POST', '/meetings/take-back')).body).toMatchObject({ code: 'not-found' });
  });

  it('is not merged into what was changed meanwhile, nor taken back over later work', async () => {
    const of = await serviceWith('demonstration');
    const [one, two] = await materialsOf(of);
    const pack = await packOf(of, [one!.id]);
    await change(of, one!.id, { notes: 'later' });
    const { body: met } = await meetFile(of, pack);
    const records = { [`material ${one!.id}`]: 'theirs' };
    await change(of, two!.id, { notes: 'meanwhile' });
    expect((await of.ask('POST', `/meetings/${met.id}/apply`, { rules: {}, records })).body).toMatchObject({
      code: 'conflict',
    });
    const { body: again } = await meetFile(of, pack);
    await of.ask('POST', `/meetings/${again.id}/apply`, { rules: {}, records });
    expect((await of.ask<Material>('GET', `/materials/${one!.id}`)).body.notes).not.toBe('later');
    await change(of, two!.id, { notes: 'after' });
    expect((await of.ask('POST', '/meetings/take-back')).body).toMatchObject({ code: 'conflict' });
  });
});

describe('a backup', () => {
  it('is compared with now by record and field, and single records come back from it', async () => {
    const of = await serviceWith('demonstration');
    const [one, two] = await materialsOf(of);
    const backup = (await of.ask<{ name: string }>('POST', '/library/backups')).body;
    await change(of, one!.id, { notes: 'changed' });
    await change(of, two!.id, { notes: 'changed too' });
    const { body: met } = await of.ask<Met>('POST', '/meetings/backup', { name: backup.name });
    expect(met.relations).toMatchObject({ 'ours newer': 2, new: 0 });
    const decided = { rules: {}, records: { [`material ${one!.id}`]: 'theirs' } };
    await of.ask('POST', `/meetings/${met.id}/apply`, decided);
    expect((await of.ask<Material>('GET', `/materials/${one!.id}`)).body.notes).not.toBe('changed');
    expect((await of.ask<Material>('GET', `/materials/${two!.id}`)).body.notes).toBe('changed too');
    const steps = (await of.ask<unknown[]>('GET', `/records/material/${one!.id}/history`)).body;
    expect(steps.length).toBeGreaterThan(1);
  });
});

describe('a library as a document', () => {
  it('becomes the same library again', async () => {
    const of = await serviceWith('demonstration');
    const json = await bytesFrom(of, '/exports/library', {});
    const { body } = await meetFile(of, json);
    expect(body.relations).toMatchObject({ new: 0, 'both changed': 0, 'theirs newer': 0, 'only here': 0 });
    await of.ask('POST', `/meetings/${body.id}/beside`, { name: 'Again' });
    const again = await bytesFrom(of, '/exports/library', {});
    const plain = (bytes: Uint8Array) => {
      const {
        writtenAt: _w,
        library: _l,
        attachments: _a,
        ...all
      } = JSON.parse(strFromU8(bytes)) as Record<string, unknown>;
      return all;
    };
    expect(plain(again)).toEqual(plain(json));
  });

  it.each(['a document', 'a saved copy'])(
    'that leaves as %s in the middle of a sitting is what both went on from',
    async (how) => {
      const ours = await serviceWith('demonstration');
      const [one] = await materialsOf(ours);
      await change(ours, one!.id, { notes: 'begun' });
      let theirs: Of;
      if (how === 'a document') {
        theirs = await serviceWith('empty');
        const { body } = await meetFile(theirs, await bytesFrom(ours, '/exports/library', {}));
        await theirs.ask('POST', `/meetings/${body.id}/beside`, { name: 'Colleague' });
      } else {
        expect((await ours.ask('POST', '/library/copy', { name: 'Colleague' })).status).toBe(200);
        theirs = await serviceWith('none');
        await theirs.session.open(join(ours.folder, 'documents', 'Colleague'));
      }
      // The same sitting goes on here; there, somebody begins another.
      await change(ours, one!.id, { notes: 'begun, and done' });
      await change(theirs, one!.id, { appearance: 'ivory' });
      const { body: met } = await meetFile(theirs, await bytesFrom(ours, '/exports/library', {}));
      expect(met.relations).toMatchObject({ 'both changed': 1, 'theirs newer': 0, new: 0 });
      await theirs.ask('POST', `/meetings/${met.id}/apply`, NONE);
      expect((await theirs.ask<Material>('GET', `/materials/${one!.id}`)).body).toMatchObject({
        ...{ notes: 'begun, and done', appearance: 'ivory' },
      });
    },
  );

  it('is refused in words where a record names another that is not in it', async () => {
    const of = await serviceWith('demonstration');
    const whole = JSON.parse(strFromU8(await bytesFrom(of, '/exports/library', {}))) as {
      records: { kind: string }[];
    };
    const torn = { ...whole, records: whole.records.filter(({ kind }) => kind !== 'material') };
    const { body } = await meetFile(of, strToU8(JSON.stringify(torn)));
    const { body: refused } = await of.ask('POST', `/meetings/${body.id}/beside`, { name: 'Torn' });
    expect(refused).toMatchObject({ code: 'invalid-input' });
    expect(of.session.current().library.folder).toBe(join(of.folder, 'documents', 'Shelf'));
    expect(existsSync(join(of.folder, 'documents', 'Torn'))).toBe(false);
  });
});
