import { pastedComposition } from '@core/materials/pasting/pasted-composition';
import { pastedLines, pastedShares, type AmountMeaning } from '@core/formulas/pasting/pasted-lines';
import { amountOf } from '@core/formulas/pasting/pasted-table';
import { namesOf, readNames } from '@core/imports/names';
import { readCell } from '@core/imports/read-cell';
import { targetOf } from '@core/imports/targets';
import type { PageText } from '@core/datasheets/lines';
import { readDataSheet } from '@core/datasheets/read-data-sheet';
import type { Cell } from '@core/tables/table';
import { sharePpm } from '@core/quantities/share';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formulaWith, meetsFile } from '../exchange/written-by-hand';

/* A share is kept to one part per million, 0.0001 %. What is less than half of that would become 0. */

const ways = { mark: '.', order: null, words: {} } as const;
const read = (key: string, cell: Cell, headed = '') => readCell(cell, targetOf(key), headed, ways);
const pasted = (text: string, meaning: AmountMeaning = 'per cent') =>
  pastedShares(pastedLines(text), meaning).map(({ ppm, fault }) => [ppm, fault]);
const lost = (written: string): unknown => ({
  ok: false,
  message: expect.stringContaining(`“${written}” is less than can be kept`) as string,
});

describe('a number with a power of ten among pasted lines', () => {
  it.each([
    ['1E-03', 0.001],
    ['1e-05', 0.000_01],
    ['2,5E-02', 0.025],
    ['1.234E-03', 0.001_234],
    ['1.2E+01', 12],
    ['1E−03', 0.001],
    ['5E-02 %', 0.05],
  ])('%s is %d', (text, value) => {
    expect(amountOf(text)).toMatchObject({ kind: 'number', value });
  });

  it.each(['12E4', 'R2E-5', '1E-', 'E-05', '1E-5.5'])('“%s” is no amount', (text) => {
    expect(amountOf(text)).toBeNull();
  });

  it('is the share of its line, between tabs, in running text and behind a per cent sign', () => {
    expect(pasted('Aqua\t99.98\nRetinol\t2E-02')).toEqual([
      [999_800, null],
      [200, null],
    ]);
    expect(pasted('Retinol 1E-03 %\n5E-2 % Tocopherol')).toEqual([
      [10, null],
      [500, null],
    ]);
    expect(pasted('Aqua\t99,5\nRetinol\t1,234E-03')).toEqual([
      [995_000, null],
      [12, 'Rounded to the four decimals that are kept.'],
    ]);
  });

  it('is never grouped, whatever the other amounts show', () => {
    // Beside “52,5” the point of “1.200” groups thousands; before a power of ten it never does.
    expect(pastedLines('Aqua\t52,5\nGlycerin\t1.200\nRetinol\t1.234E-03').map((one) => one.amount)).toEqual([
      52.5, 1200, 0.001_234,
    ]);
  });
});

describe('a share that is too small to be kept', () => {
  it('comes in with 0 % in pasted lines only with a word about it', () => {
    const told = (written: string) =>
      `“${written}” is less than 0.0001 %, the least that is kept: it comes in with 0 %.`;
    expect(pasted('Retinol\t1E-05\nAqua\t0.00005\nParfum\t0')).toEqual([
      [0, told('1E-05')],
      [1, 'Rounded to the four decimals that are kept.'],
      [0, null],
    ]);
    expect(pasted('Aqua\t1000 kg\nRetinol\t1 mg', 'parts')).toEqual([
      [1_000_000, null],
      [0, told('1 mg')],
    ]);
    expect(pasted('Aqua\t90\nParfum\tsome 5', 'per cent')[1]).toEqual([
      0,
      '“some 5” is not a number: it comes in with 0 %.',
    ]);
  });

  it('is refused by its cell in tables of formulas and of materials, as a text and as a number', () => {
    for (const key of ['line.amount', 'usage.maxPpm', 'composition.share', 'usage.range'])
      expect(read(key, '1E-05'), key).toEqual(lost('1E-05'));
    for (const key of ['line.amount', 'usage.maxPpm', 'composition.share', 'usage.range'])
      expect(read(key, 0.000_01), key).toEqual(lost('0.00001'));
    expect(read('line.amount', '0.4', 'ppm')).toEqual(lost('0.4'));
    expect(read('composition.share', '0.00001 – 0.1')).toEqual(lost('0.00001 – 0.1'));
    expect(read('usage.range', '< 0.00002 %')).toEqual(lost('< 0.00002 %'));
    for (const cell of ['0', 0])
      expect(read('line.amount', cell)).toEqual({ ok: true, value: { percent: 0, toHundred: false } });
    // Of limits the figure itself is kept.
    expect(read('limit.percent', '1E-05')).toEqual({ ok: true, value: 0.000_01 });
  });

  it('is refused behind its name, with the name', () => {
    expect(read('composition', 'Aqua (99.9 %); Retinol (1E-05 %)')).toEqual({
      ok: false,
      message: expect.stringMatching(/^Retinol: “1E-05 %” is less than can be kept/) as string,
    });
    expect(read('allergens', 'Linalool 0.1 ppm')).toEqual(lost('0.1 ppm'));
    expect(readNames('Aqua (99.9 %); Retinol (0.1 %)', '.').lost).toBeNull();
  });

  it('is refused in a pasted composition, whole rows and names alone', () => {
    expect(pastedComposition('Aqua\t99.9\nRetinol\t1E-05')).toEqual({
      ok: false,
      message: expect.stringMatching(/^“Retinol”: “1E-05” is less than can be kept/) as string,
    });
    expect(pastedComposition('Aqua (99.9 %)\nRetinol (0.1 ppm)')).toMatchObject({ ok: false });
    expect(pastedComposition('Aqua\t0.9999\nRetinol\t1E-04')).toEqual({
      ok: true,
      parts: [
        { inci: 'Aqua', lowPpm: 999_900, highPpm: 999_900 },
        { inci: 'Retinol', lowPpm: 100, highPpm: 100 },
      ],
    });
  });

  it('is proposed from no data sheet', () => {
    const item = (text: string, x: number, y: number) => ({ text, x, y, height: 10, width: text.length * 5 });
    const sheet = (trace: string): PageText => ({
      ...{ number: 1, width: 595, height: 842 },
      items: [
        ...[item('INCI name', 50, 100), item('Content %', 300, 100)],
        ...[item('Glycerin', 50, 116), item('99.9', 300, 116)],
        ...[item('Tocopherol', 50, 132), item(trace, 300, 132)],
      ],
    });
    const composition = (trace: string): unknown =>
      readDataSheet([sheet(trace)]).proposals.find(({ key }) => key === 'composition')?.value;
    expect(composition('0.1')).toEqual([
      { inci: 'Glycerin', lowPpm: 999_000, highPpm: 999_000 },
      { inci: 'Tocopherol', lowPpm: 1_000, highPpm: 1_000 },
    ]);
    expect(composition('0.00001')).toBeUndefined();
  });

  it('is refused in a document: its shares are whole parts per million', async () => {
    expect((await meetsFile(formulaWith(1))).relations.new).toBe(2);
    await expect(meetsFile(formulaWith(0.4))).rejects.toMatchObject({
      ...{ code: 'invalid-input', message: 'A formula in this file does not keep to its form.' },
      advice: expect.stringContaining(
        'phases.0.lines.0.ppm: A share must be a number of per cent with at most four decimals.',
      ) as string,
    });
  });

  it('never is a share of 0, whatever it is', () => {
    const percent = fc.double({ min: 1e-12, max: 100, noNaN: true });
    fc.assert(
      fc.property(percent, (value) => {
        const cell = read('line.amount', value);
        const share = read('composition.share', value);
        const kept = value >= 0.000_05;
        expect(cell.ok).toBe(kept);
        expect(share.ok && sharePpm.parse((share.value as number[])[0]) > 0).toBe(kept);
        const [line] = pasted(`Aqua\t${value}`);
        expect((line![0] as number) > 0 || line![1] !== null).toBe(true);
      }),
    );
  });
});

describe('a share behind a name with a power of ten', () => {
  it.each([
    ['Tocopherol 1E-02 %', 100],
    ['Tocopherol (1E-02)', 100],
    ['Tocopherol: 5E-03', 50],
    ['1.5E-03 % Tocopherol', 15],
    ['Tocopherol 2,5E-02', 250],
    ['Tocopherol 1e+03 ppm', 1_000],
  ])('%s', (text, ppm) => {
    expect(namesOf(text, text.includes(',') ? ',' : '.')).toEqual([
      { inci: 'Tocopherol', lowPpm: ppm, highPpm: ppm },
    ]);
  });

  it('has both of its ends', () => {
    expect(namesOf('Tocopherol 1E-02 – 5E-02 %', '.')).toEqual([
      { inci: 'Tocopherol', lowPpm: 100, highPpm: 500 },
    ]);
  });
});
