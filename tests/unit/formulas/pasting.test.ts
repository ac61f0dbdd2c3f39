import { columnsOf } from '@core/formulas/pasting/pasted-columns';
import { likelyMeaning, pastedLines, pastedShares } from '@core/formulas/pasting/pasted-lines';
import { materialMatcher } from '@core/formulas/pasting/match-materials';
import { amountOf, pastedTable } from '@core/formulas/pasting/pasted-table';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('a pasted table', () => {
  it('is split at the tabs of a spreadsheet, at semicolons, or at the amount in running text', () => {
    expect(pastedTable('Aqua\t70,5\r\n\r\nGlycerin\t3')).toEqual([
      ['Aqua', '70,5'],
      ['Glycerin', '3'],
    ]);
    expect(pastedTable('"Oil; sweet";4\nAqua;q.s.')).toEqual([
      ['Oil; sweet', '4'],
      ['Aqua', 'q.s.'],
    ]);
    expect(pastedTable('PEG-40 Stearate 2.5 %\n3% Glycerin\nAqua q.s. to 100')).toEqual([
      ['PEG-40 Stearate', '2.5 %'],
      ['Glycerin', '3%'],
      ['Aqua', 'q.s. to 100'],
    ]);
  });

  it('reads an amount with its unit or sign, and takes no name for one', () => {
    expect(amountOf('2,50 %')).toEqual({ kind: 'number', value: 2.5, percent: true });
    expect(amountOf('12.5 g')).toEqual({ kind: 'number', value: 12.5, percent: false });
    for (const mark of ['q.s.', 'qs', 'q.s. to 100', 'ad 100', 'to 100 %', 'q.s. ad 100'])
      expect(amountOf(mark), mark).toEqual({ kind: 'to 100' });
    for (const name of ['PEG-40', 'Aqua', '', 'Toluene', 'Ceteareth-20'])
      expect(amountOf(name), name).toBeNull();
  });
});

describe('the columns of a pasted table', () => {
  it('are known by their headings', () => {
    const table = pastedTable(
      'Phase\tCode\tTrade name\tINCI\t% w/w\tRemarks\nA\tW1\tSpring water\tAqua\t80\tboiled',
    );
    expect(columnsOf(table).kinds).toEqual(['phase', 'code', 'name', 'inci', 'amount', 'note']);
  });

  it('are known by what stands in them where there is no heading: row numbers and prices are no shares', () => {
    const table = pastedTable('1\tAqua\t70\t0.10\n2\tGlycerin\t5\t1.90\n3\tOlea Europaea Oil\t25\t6.20');
    expect(columnsOf(table).kinds).toEqual(['other', 'name', 'amount', 'other']);
  });
});

describe('pasted lines', () => {
  it('leave out the total, follow phase headings, and keep notes', () => {
    const text = [
      'Material\t%\tNote',
      'Phase A\t\t',
      'Aqua\tq.s.\t',
      'Glycerin\t3\tvegetable',
      'Phase B – oils\t\t',
      'Squalane\t5\t',
      'Total\t100\t',
    ].join('\n');
    expect(pastedLines(text)).toEqual([
      {
        names: ['Aqua'],
        tradeName: 'Aqua',
        inci: 'Aqua',
        amount: null,
        saidPercent: true,
        toHundred: true,
        written: 'q.s.',
        note: '',
        phase: 'A',
      },
      {
        ...{ names: ['Glycerin'], tradeName: 'Glycerin', inci: 'Glycerin', amount: 3, toHundred: false },
        ...{ written: '3', note: 'vegetable', phase: 'A', saidPercent: true },
      },
      {
        ...{ names: ['Squalane'], tradeName: 'Squalane', inci: 'Squalane', amount: 5, toHundred: false },
        ...{ written: '5', note: '', phase: 'B', saidPercent: true },
      },
    ]);
  });

  it('take a lone name for a line without a share, and say so', () => {
    const lines = pastedLines('Xanthan Gum\nGlycerin\t3');
    expect(lines.map((line) => line.amount)).toEqual([null, 3]);
    expect(pastedShares(lines, 'per cent').map((share) => share.fault !== null)).toEqual([true, false]);
  });

  it('are rounded to what is kept only with a word about it', () => {
    const [share] = pastedShares(pastedLines('Aqua\t33.333333'), 'per cent');
    expect(share?.ppm).toBe(333_333);
    expect(share?.fault).toMatch(/Rounded/);
    expect(pastedShares(pastedLines('Aqua\t0.1001'), 'per cent')[0]).toEqual({ ppm: 1_001, fault: null });
  });

  it('of a batch in grams or of fractions of 1 are taken as parts', () => {
    const grams = pastedLines('Aqua\t400\nGlycerin\t100');
    expect(likelyMeaning(grams)).toBe('parts');
    expect(pastedShares(grams, 'parts').map(({ ppm }) => ppm)).toEqual([800_000, 200_000]);
    expect(likelyMeaning(pastedLines('Aqua\t0.8\nGlycerin\t0.2'))).toBe('parts');
    expect(likelyMeaning(pastedLines('Aqua\t80\nGlycerin\t20'))).toBe('per cent');
    expect(likelyMeaning(pastedLines('Aqua\tq.s.\nGlycerin\t1'))).toBe('per cent');
  });

  it('are per cent where the table says so, though they come to 1: two preservatives are no whole formula', () => {
    for (const text of [
      'Phenoxyethanol 0.9 %\nEthylhexylglycerin 0.1 %',
      'Phenoxyethanol\t0,9 %\nEthylhexylglycerin\t0,1 %',
      'Ingredient\t% w/w\nPhenoxyethanol\t0.9\nEthylhexylglycerin\t0.1',
      'Ingredient\tPer cent\nPhenoxyethanol\t0.9\nEthylhexylglycerin\t0.1',
      'Fragrance 1 %',
    ]) {
      const lines = pastedLines(text);
      expect(likelyMeaning(lines), text).toBe('per cent');
      expect(
        pastedShares(lines, 'per cent').reduce((sum, { ppm }) => sum + ppm, 0),
        text,
      ).toBe(10_000);
    }
    expect(likelyMeaning(pastedLines('Ingredient\tg\nAqua\t400\nGlycerin\t100'))).toBe('parts');
  });

  it('that are no share come in with none, and say why', () => {
    const told = (text: string, meaning: 'per cent' | 'parts') =>
      pastedShares(pastedLines(text), meaning).map(({ ppm, fault }) => [ppm, fault]);
    const none = 'This is not a share of 0 to 100 %: it comes in with 0 %.';
    expect(told('Aqua\t120\nGlycerin\t-3\nSqualane\t100\nParfum\t0', 'per cent')).toEqual([
      [0, none],
      [0, none],
      [1_000_000, null],
      [0, null],
    ]);
    expect(told('Aqua\tq.s.\nGlycerin\t3\nParfum\t', 'per cent')).toEqual([
      [0, null],
      [30_000, null],
      [0, 'No share is given: it comes in with 0 %.'],
    ]);
    expect(told('Aqua\t3\nGlycerin\t-3\nSqualane\t1\nParfum\t', 'parts')).toEqual([
      [750_000, null],
      [0, 'Less than nothing: it comes in with 0 %.'],
      [250_000, null],
      [0, 'No amount is given: it comes in with 0 %.'],
    ]);
  });

  it('keep quotation marks, marks within them and doubled ones as files write them (RFC 4180)', () => {
    expect(pastedTable('"Oil ""cold"" pressed";5\n"A;B";2\nsize 5" jar;1')).toEqual([
      ['Oil "cold" pressed', '5'],
      ['A;B', '2'],
      ['size 5" jar', '1'],
    ]);
  });

  it('are two hundred at most', () => {
    const text = Array.from({ length: 250 }, (_, at) => `Oil ${at}x\t0.4`).join('\n');
    expect(pastedLines(text)).toHaveLength(200);
  });

  it('in parts come to exactly 100 % together, whatever they are', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 5_000, noNaN: true }), { minLength: 1 }),
        (amounts) => {
          const lines = amounts.map((amount, at) => ({
            ...{
              names: [`M${at}`],
              tradeName: `M${at}`,
              inci: '',
              amount,
              written: String(amount),
              saidPercent: false,
              toHundred: false,
              note: '',
              phase: null,
            },
          }));
          const sum = pastedShares(lines, 'parts').reduce((total, { ppm }) => total + ppm, 0);
          expect(sum).toBe(1_000_000);
        },
      ),
    );
  });

  it('survive any text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('a', 'P', '\t', '\n', ';', '"', '1', ',', '.', '%', ' ') }),
        (text) => {
          for (const line of pastedLines(text)) expect(line.tradeName).not.toBe('');
        },
      ),
    );
  });
});

describe('materials are recognised', () => {
  const row = (id: string, tradeName: string, inci: string, code = '', status = 'in use') => ({
    ...{ id, tradeName, inci, code, status },
  });
  const find = materialMatcher([
    row('1', 'Spring water', 'Aqua', 'W-1'),
    row('2', 'Glycerine 99', 'Glycerin'),
    row('3', 'Another glycerine', 'Glycerin'),
    row('4', 'Old glycerine', 'Glycerin', 'W-1', 'archived'),
    row('5', 'Aqua', 'Hamamelis Water'),
  ]);

  it('by code, then trade name, then INCI name, whatever their case', () => {
    expect(find(['w-1', 'Aqua'])).toMatchObject({ by: 'code', rows: [{ id: '1' }] });
    expect(find(['AQUA'])).toMatchObject({ by: 'trade name', rows: [{ id: '5' }] });
    expect(find(['glycerin'])).toMatchObject({ by: 'INCI name', rows: [{ id: '3' }, { id: '2' }] });
  });

  it('by what else they are called, and by one of two names', () => {
    expect(find(['Water'])).toMatchObject({ by: 'INCI name', rows: [{ id: '1' }] });
    expect(find(['Glycerin (vegetable)'])).toMatchObject({ by: 'INCI name' });
    expect(find(['Water/Eau'])).toMatchObject({ by: 'INCI name', rows: [{ id: '1' }] });
    expect(find(['Squalane'])).toBeNull();
  });
});
