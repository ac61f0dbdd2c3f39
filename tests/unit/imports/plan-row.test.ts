import { planRow, type PlanParts } from '@core/imports/plan-row';
import { refusedRowsCsv } from '@core/imports/refused-rows';
import type { Fault, Values } from '@core/imports/row';
import { plain } from '@core/imports/plain';
import type { Material } from '@core/materials/material';
import { readCsv } from '@core/tables/csv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figure, make } from '../checks/build';

const wax = make('Larkspur Wax', 'Cera Alba', { code: 'W-1', figures: { hlb: figure(5) } });
const twins = [make('Harrow Gum', 'Xanthan Gum'), make('Harrow gum', 'Xanthan Gum')];
const SHELF: Material[] = [wax, ...twins];

function plan(values: Values, key: PlanParts['key'] = 'tradeName', faults: Fault[] = []) {
  return planRow(
    { line: 4, values, faults },
    {
      ...{ key, region: 'en-GB', taking: { source: 'taken in', today: '2026-11-29', currency: 'EUR' } },
      known: (name) => SHELF.filter((one) => plain(key === 'code' ? one.code : one.tradeName) === name),
    },
  );
}
const messages = (...asked: Parameters<typeof plan>): string[] =>
  plan(...asked).outcome.faults.map(({ message }) => message);
const part = (inci: string, lowPpm: number, highPpm = lowPpm) => ({ inci, lowPpm, highPpm });

describe('a row whose material the library holds', () => {
  it('is the same where it says nothing new, and nothing is written', () => {
    for (const values of [{ tradeName: 'Larkspur Wax' }, { tradeName: 'Larkspur Wax', code: 'W-1' }]) {
      const { outcome, content, before } = plan(values);
      expect([outcome.kind, outcome.differences, content, before?.id]).toEqual(['same', [], null, wax.id]);
    }
  });

  it('is found whatever its case, accents and dashes', () => {
    for (const tradeName of ['LARKSPUR WAX', 'larkspur-wax', ' Lárkspur  Wax '])
      expect(plan({ tradeName }).before?.id, tradeName).toBe(wax.id);
  });

  it('is changed with each field in words, before and after, and nothing else', () => {
    const { outcome, content } = plan({ tradeName: 'Larkspur Wax', charge: 'anionic', code: 'W-2' });
    expect(outcome).toMatchObject({ kind: 'changed', line: 4, name: 'Larkspur Wax', faults: [] });
    expect(outcome.differences.map(({ key, before, after }) => [key, before, after])).toEqual([
      ['code', 'W-1', 'W-2'],
      ['charge', '', 'Anionic'],
    ]);
    expect(content).toMatchObject({ charge: 'anionic', code: 'W-2', figures: { hlb: figure(5) } });
  });

  it('is found by its code and may bear another name then; by its name, another code', () => {
    const { outcome, before } = plan({ tradeName: 'Larkspur Wax Extra', code: 'w 1' }, 'code');
    expect([before?.id, outcome.kind, outcome.name]).toEqual([wax.id, 'changed', 'Larkspur Wax Extra']);
  });

  it('keeps its name where a price list has only codes', () => {
    const { outcome } = plan({ code: 'W-1', charge: 'cationic' }, 'code');
    expect([outcome.kind, outcome.name]).toEqual(['changed', 'Larkspur Wax']);
  });
});

describe('a row that is refused', () => {
  it('has nothing to be known by', () => {
    expect(messages({ charge: 'anionic', tradeName: '' })).toContain(
      'The row has no trade name to be known by.',
    );
    expect(messages({ tradeName: 'Larkspur Wax' }, 'code')).toContain('The row has no code to be known by.');
    expect(plan({ tradeName: '–' }).outcome.kind).toBe('refused');
  });

  it('may be two of the library, which are not guessed between', () => {
    expect(messages({ tradeName: 'harrow gum' })).toEqual([
      '2 materials of the library have this trade name. Give them codes of their own, or choose another column to know them by.',
    ]);
  });

  it.each<[string, Values, string]>([
    [
      'a price without a pack',
      { 'offer.price': { amount: 10, currency: null } },
      'A price needs the size of its pack.',
    ],
    [
      'a negative price',
      { 'offer.price': { amount: -1, currency: null }, 'offer.pack': 1000 },
      'A price cannot be negative.',
    ],
    [
      'a price in parts of a cent',
      { 'offer.price': { amount: 1.234, currency: null }, 'offer.pack': 1000 },
      'This price has more decimals than its currency.',
    ],
    ['a pack of nothing', { 'offer.supplier': 'Harrow', 'offer.pack': 0 }, 'The pack must weigh something.'],
    [
      'a usage that falls',
      { 'usage.minPpm': 50_000, 'usage.maxPpm': 20_000 },
      'Usage must rise from lowest to typical to highest.',
    ],
  ])('breaks a rule of the form: %s', (_, values, message) => {
    const told = plan({ tradeName: 'Larkspur Wax', 'offer.supplier': 'Harrow Supplies', ...values });
    expect(told.outcome.faults.map((one) => one.message)).toEqual([message]);
    expect(told.outcome.faults[0]!.heading).not.toBe('');
    expect([told.outcome.kind, told.outcome.differences, told.content]).toEqual(['refused', [], null]);
  });

  it('keeps the faults of its cells, each once, and is not judged by rules that miss those cells', () => {
    const fault = { heading: 'Charge', message: 'purple' };
    expect(messages({ tradeName: 'New Oil' }, 'tradeName', [fault])).toEqual(['purple']);
    expect(messages({ tradeName: 'harrow gum' }, 'tradeName', [fault])).toHaveLength(2);
  });

  it('needs an INCI name where it is new, for nothing is made up', () => {
    expect(plan({ tradeName: 'New Oil' }).outcome).toMatchObject({
      ...{ kind: 'refused', name: 'New Oil', faults: [{ heading: 'Composition' }] },
    });
    const fine = plan({ tradeName: 'New Oil', composition: [part('Squalane', 1_000_000)] });
    expect([fine.outcome.kind, fine.before, fine.content?.tradeName]).toEqual(['new', null, 'New Oil']);
  });
});

describe('what is told of a row and stops nothing', () => {
  it('is that not every INCI name has its share', () => {
    const told = (...composition: object[]) => plan({ tradeName: 'New Blend', composition }).outcome;
    const loose = told(part('Phenoxyethanol', 900_000), part('Ethylhexylglycerin', 0, 100_000));
    expect([loose.kind, loose.notes]).toEqual([
      'new',
      ['Not every INCI name came with its share: those without may be anything that the others leave.'],
    ]);
    const whole = told(part('Phenoxyethanol', 900_000), part('Ethylhexylglycerin', 100_000));
    expect([whole.kind, whole.notes]).toEqual(['new', []]);
  });
});

describe('laws of a plan', () => {
  const rows = fc.record(
    {
      tradeName: fc.constantFrom('Larkspur Wax', 'New Oil', 'harrow gum', ''),
      code: fc.constantFrom('W-1', 'X-9'),
      charge: fc.constantFrom('anionic', 'cationic'),
      'usage.maxPpm': fc.integer({ min: 0, max: 1_000_000 }),
      composition: fc.constant([part('Squalane', 1_000_000)]),
    },
    { requiredKeys: [] },
  );
  it('a content is written if and only if it is new or changed; faults refuse; a change says in what', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom('code', 'tradeName'), (values, key) => {
        const { outcome, content, before } = plan(values, key as PlanParts['key']);
        expect(content !== null).toBe(outcome.kind === 'new' || outcome.kind === 'changed');
        expect(outcome.faults.length > 0).toBe(outcome.kind === 'refused');
        expect(outcome.differences.length > 0).toBe(outcome.kind === 'changed');
        if (outcome.kind === 'new') expect(before).toBeNull();
      }),
      { numRuns: 80 },
    );
  });
});

describe('the refused rows as a file', () => {
  const sheet = readCsv('Shelf\nName;Charge;Note\nA;anionic;\nB;purple;"x; y"\nC;;\n', 'shelf.csv');
  const refused = (line: number, ...faults: Fault[]) => ({
    ...{ line, kind: 'refused' as const, name: '', notes: [], differences: [], faults },
  });

  it('have their line, why, and all their cells under the headings of the table; others stay out', () => {
    const at = sheet.rows.find(({ cells }) => cells[0] === 'B')!.line;
    const text = refusedRowsCsv(sheet, 1, [
      refused(at, { heading: 'Charge', message: 'Unknown.' }, { heading: '', message: 'Twice.' }),
      { ...refused(3), kind: 'new' },
    ]);
    const read = readCsv(text, 'refused.csv');
    expect(read.rows.map(({ cells }) => cells)).toEqual([
      ['Line', 'Why it was refused', 'Name', 'Charge', 'Note'],
      [String(at), 'Charge: Unknown. Twice.', 'B', 'purple', 'x; y'],
    ]);
  });

  it('are none where nothing was refused, and every row is as wide as the widest', () => {
    expect(readCsv(refusedRowsCsv(sheet, 1, []), 'refused.csv').rows).toHaveLength(1);
    const wide = refusedRowsCsv(sheet, 0, [refused(5)]);
    const lines = wide.trim().split('\r\n');
    expect(lines.map((one) => one.split(',').length)).toEqual([5, 5]);
  });
});
