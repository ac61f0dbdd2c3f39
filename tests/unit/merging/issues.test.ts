import type { LibraryDocument } from '@core/exchange/document';
import type { Material } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import type { Engine } from '@db/library/sql/engine';
import { partOf } from '@db/packs/part-of';
import { issueNow, issueOf, readIssuesOf } from '@db/record/issues';
import { beforeEach, describe, expect, it } from 'vitest';
import { add, copyOf, documentOf, edit, emptyLibrary, mergeInto, read, wax } from './two-libraries';

/* The numbers of issues on paper, where libraries meet and packs go out. */

let ours: Engine;
let id: string;
beforeEach(async () => {
  ours = await emptyLibrary();
  id = add(ours, 'material', { ...wax('Pearl Wax'), notes: 'first' });
});

let minute = 0;
const moment = (): string => new Date(Date.UTC(2026, 6, 1, 10, (minute += 1))).toISOString();
const issue = (side: Engine, by = 'Ada', at = moment()): number =>
  issueNow(side, MATERIAL, read<Material>(side, 'material', id), { at, by });
const numberOf = (side: Engine): number | null =>
  issueOf(side, MATERIAL, read<Material>(side, 'material', id));
const issued = (side: Engine) => readIssuesOf(side, 'material', id).map(({ n, by }) => [n, by]);

describe('an issue that another library gave', () => {
  it('comes with its material, and the sheet bears its number there', async () => {
    issue(ours);
    const other = await emptyLibrary();
    expect(mergeInto(other, documentOf(ours)).apart).toEqual([]);
    expect(issued(other)).toEqual([[1, 'Ada']]);
    expect(numberOf(other)).toBe(1);
    expect(issue(other)).toBe(1);
  });

  it('comes to a material that is here as it is there, once however often the two meet', async () => {
    const other = await copyOf(ours);
    edit(other, 'material', id, { notes: 'second' });
    issue(other, 'Grace');
    mergeInto(ours, documentOf(other));
    expect(numberOf(ours)).toBe(1);
    const before = readIssuesOf(ours, 'material', id);
    mergeInto(ours, documentOf(other));
    mergeInto(other, documentOf(ours));
    expect(readIssuesOf(ours, 'material', id)).toEqual(before);
    expect(readIssuesOf(other, 'material', id)).toEqual(before);
  });

  it('bears the next free number where its own was given here to another state, and says so', async () => {
    const other = await copyOf(ours);
    issue(ours);
    edit(other, 'material', id, { notes: 'changed there' });
    issue(other, 'Grace');
    const { apart } = mergeInto(ours, documentOf(other));
    expect(apart).toEqual([{ was: 'issue 1 of “Pearl Wax” in North Bench', is: 'issue 2' }]);
    expect(issued(ours)).toEqual([
      [1, 'Ada'],
      [2, 'Grace'],
    ]);
    // Theirs is newer and stands here now: it is their paper.
    expect(numberOf(ours)).toBe(2);
    expect(mergeInto(ours, documentOf(other)).apart).toEqual([]);
    edit(ours, 'material', id, { notes: 'changed since' });
    expect(issue(ours)).toBe(3);
  });

  it('does not take the number from a sheet that is still as it was issued here later', async () => {
    const other = await copyOf(ours);
    const [early, late] = [moment(), moment()];
    edit(ours, 'material', id, { notes: 'changed here' });
    edit(other, 'material', id, { notes: 'changed there' });
    issue(other, 'Grace', early);
    issue(ours, 'Ada', late);
    // Both changed its notes: ours stay, by rule.
    mergeInto(ours, documentOf(other));
    expect(issued(ours)).toEqual([
      [1, 'Ada'],
      [2, 'Grace'],
    ]);
    expect(numberOf(ours)).toBe(1);
  });

  it('stays where its material is left', async () => {
    const other = await copyOf(ours);
    edit(other, 'material', id, { notes: 'changed there' });
    issue(other);
    mergeInto(ours, documentOf(other), { rules: { 'theirs newer': 'leave' } });
    expect(issued(ours)).toEqual([]);
  });
});

describe('a pack', () => {
  const packOf = (side: Engine, withSuppliers: boolean): LibraryDocument => {
    const asked = { title: 'Wax', formulas: [], materials: [id], format: 'pack' as const };
    return partOf(documentOf(side), { ...asked, withSuppliers, withBatches: false });
  };
  const offer = {
    ...{ supplier: 'North Wax House', itemCode: '', packMg: 1_000_000, priceMinor: 1_000 },
    ...{ currency: 'EUR', date: '2026-01-01' },
  };

  it.each([true, false])('takes the issues of its materials along, suppliers told: %s', async (told) => {
    edit(ours, 'material', id, { offers: [offer] });
    issue(ours);
    const another = add(ours, 'material', wax('Not Packed'));
    issueNow(ours, MATERIAL, read<Material>(ours, 'material', another), { at: moment(), by: 'Ada' });
    const pack = packOf(ours, told);
    expect(pack.issues.map(({ record, n }) => [record, n])).toEqual([[id, 1]]);
    expect(JSON.stringify(pack).includes('North Wax House')).toBe(told);
    const other = await emptyLibrary();
    mergeInto(other, pack);
    expect(numberOf(other)).toBe(1);
    // It comes home without becoming a second issue.
    const before = readIssuesOf(ours, 'material', id);
    mergeInto(ours, packOf(other, true));
    expect(readIssuesOf(ours, 'material', id)).toEqual(before);
    expect(numberOf(ours)).toBe(1);
  });
});
