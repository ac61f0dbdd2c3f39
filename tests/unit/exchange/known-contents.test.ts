import { readRecords } from '@db/exchange/read-document';
import { describe, expect, it } from 'vitest';
import { copyOf, demo, documentOf, drained } from '../merging/two-libraries';

/* A library read beside one that was validated just before: what is the same there is not validated anew. */

const knownOf = (document: ReturnType<typeof documentOf>) =>
  new Map(document.records.map(({ state, content }) => [state, content]));

describe('a library read beside another', () => {
  it('says what it says read alone: where the two are the same, and where they differ', async () => {
    const ours = await demo();
    const theirs = await copyOf(ours);
    theirs.run("UPDATE material SET notes = 'changed there' WHERE rowid % 3 = 0");
    theirs.run("UPDATE formula SET purpose = 'changed there' WHERE rowid % 2 = 0");
    const known = knownOf(documentOf(theirs));
    const beside = drained(readRecords(ours, known));
    expect(beside).toEqual(drained(readRecords(ours)));
    const taken = beside.filter(({ content }) => [...known.values()].includes(content)).length;
    expect(taken).toBeGreaterThan(beside.length / 2);
    expect(taken).toBeLessThan(beside.length);
  });

  it('is told as its rules have it, though another tool wrote into its file', async () => {
    const theirs = await demo();
    const known = knownOf(documentOf(theirs));
    const ours = await copyOf(theirs);
    ours.run("UPDATE material SET trade_name = trade_name || '  '");
    const beside = drained(readRecords(ours, known));
    expect(beside).toEqual(drained(readRecords(theirs)));
    ours.run("UPDATE formula SET product_type = 'soup'");
    expect(() => drained(readRecords(ours, known))).toThrow(/product/i);
  });

  it('is refused where it says the same as of a moment that can be none', async () => {
    const theirs = await demo();
    const known = knownOf(documentOf(theirs));
    const ours = await copyOf(theirs);
    ours.run("UPDATE material SET created_at = 'long ago'");
    expect(() => drained(readRecords(ours, known))).toThrow(/createdAt/);
  });
});
