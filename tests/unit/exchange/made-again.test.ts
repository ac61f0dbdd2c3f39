import { readDocumentText, type LibraryDocument } from '@core/exchange/document';
import { MATERIAL } from '@core/materials/noun';
import { settings } from '@core/settings/settings';
import { drawFormulaCode } from '@db/formulas/numbers';
import type { Engine } from '@db/library/sql/engine';
import { readMaterial } from '@db/materials/materials';
import { readHistory } from '@db/record/history';
import { issueNow, issueOf } from '@db/record/issues';
import { readSettings, writeSettings } from '@db/settings/settings';
import { describe, expect, it } from 'vitest';
import { AT, documentOf, edit, emptyLibrary, libraryFrom, smallLibrary } from '../merging/two-libraries';

const sent = (engine: Engine): LibraryDocument => readDocumentText(JSON.stringify(documentOf(engine)));

describe('a library made from a document', () => {
  it('goes on with the numbers of its issues: none is printed on another paper', async () => {
    const { engine, water } = await smallLibrary();
    const issue = (library: Engine): number =>
      issueNow(library, MATERIAL, readMaterial(library, water)!, { at: AT, by: 'Ada' });
    expect(issue(engine)).toBe(1);
    edit(engine, 'material', water, { notes: 'another drum' });
    expect(issue(engine)).toBe(2);
    const again = await libraryFrom(sent(engine));
    expect(documentOf(again).issues).toEqual(documentOf(engine).issues);
    expect(issueOf(again, MATERIAL, readMaterial(again, water)!)).toBe(2);
    edit(again, 'material', water, { notes: 'a third' });
    expect(issue(again)).toBe(3);
    // One that was written before there were any says nothing of them.
    const { issues: _issues, ...old } = sent(engine);
    expect(readDocumentText(JSON.stringify(old)).issues).toEqual([]);
  });

  it('goes on with its settings, its running numbers and what is known of its records', async () => {
    const { engine, water } = await smallLibrary();
    writeSettings(engine, settings.parse({ makerName: 'Weir & Lane', formulaPrefix: 'W-' }), AT);
    expect([drawFormulaCode(engine, 'W-'), drawFormulaCode(engine, 'F-')]).toEqual(['W-001', 'F-002']);
    edit(engine, 'material', water, { notes: 'another drum' }, 'Grace');
    const again = await libraryFrom(sent(engine));
    expect(readSettings(again)).toEqual(readSettings(engine));
    expect([drawFormulaCode(again, 'W-'), drawFormulaCode(again, 'F-')]).toEqual(['W-002', 'F-003']);
    expect(readHistory(again, 'material', water)).toEqual(readHistory(engine, 'material', water));
    expect(again.pragma('foreign_key_check')).toBeNull();
  });

  it('of nothing is a library all the same; and what a state withholds leaves no mark', async () => {
    const empty = await libraryFrom(sent(await emptyLibrary()));
    expect(documentOf(empty).records).toEqual([]);
    const { engine, water } = await smallLibrary();
    edit(engine, 'material', water, { notes: 'another drum' });
    edit(engine, 'material', water, { notes: 'a third' });
    const whole = sent(engine);
    const [first] = whole.history.find(({ record }) => record === water)!.entries;
    const states = whole.states.filter(({ hash }) => hash !== first!.state);
    const bare = { ...whole, states, versions: [], batches: [] };
    const again = await libraryFrom(bare);
    expect(readHistory(again, 'material', water).map(({ n, hash }) => [n, hash])).toEqual(
      readHistory(engine, 'material', water)
        .slice(1)
        .map(({ hash }, at) => [at + 1, hash]),
    );
  });
});
