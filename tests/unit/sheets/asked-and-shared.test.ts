import { printable, unprintableCharacters, codePointName } from '@core/sheets/printable-text';
import { SHEETS, sheetFileName, sheetRequest, type SheetKind } from '@core/sheets/requests';
import { forSharing, sheetName } from '@core/sheets/sharing';
import { recordUnit } from '@core/batches/record-unit';
import { stepPhases } from '@core/sheets/procedure';
import type { Offer } from '@core/materials/offer';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../checks/build';

const offer = (supplier: string, itemCode: string): Offer => ({
  supplier,
  itemCode,
  packMg: null,
  priceMinor: null,
  currency: 'EUR',
  date: '2026-01-01',
});
const wax = make('Alba-Wachs 7', 'Cera Alba', { offers: [offer('Weir & Söhne', 'W-100')] });
const oil = make('Zoë Öl', 'Olea Europaea Fruit Oil', { offers: [offer('Münster', '20777')] });
const used = { [wax.id]: wax, [oil.id]: oil };
const cream = content([
  phase([
    [wax, 5],
    [oil, 20],
  ]),
]);
const shared = (text: string, tradeNames = false): string =>
  forSharing({ ...cream, purpose: text }, used, tradeNames).purpose;

describe('a text that is shared', () => {
  it.each([
    ['Melt Alba-Wachs 7.', 'Melt Cera Alba.'],
    ['Melt ALBA WACHS 7.', 'Melt Cera Alba.'],
    ['Melt alba–wachs 7.', 'Melt Cera Alba.'],
    ['Melt Alba\nWachs 7.', 'Melt Cera Alba.'],
    ['Warm Zoë Öl gently.', 'Warm Olea Europaea Fruit Oil gently.'],
    ['Warm Zoe\u0308 O\u0308l gently.', 'Warm Olea Europaea Fruit Oil gently.'],
    ['Ask Weir & Söhne or MÜNSTER.', 'Ask the supplier or the supplier.'],
    ['Item W-100, w-100.', 'Item Cera Alba, Cera Alba.'],
    ['Order 20777.', 'Order Olea Europaea Fruit Oil.'],
    ['Stir at 20777 rpm; weigh 20777 g; 20777.5', 'Stir at 20777 rpm; weigh 20777 g; 20777.5'],
    ['Albatross, Wachs 7, Zoë Ölkanne, Münsterland', 'Albatross, Wachs 7, Zoë Ölkanne, Münsterland'],
    ['', ''],
  ])('%j', (written, printed) => {
    expect(shared(written)).toBe(printed);
  });

  it('with trade names keeps those, and still no supplier and no item code', () => {
    expect(shared('Alba-Wachs 7 of Weir & Söhne (W-100)', true)).toBe(
      'Alba-Wachs 7 of the supplier (Alba-Wachs 7)',
    );
  });

  it('holds none of the names, wherever they are put and however often', () => {
    const name = fc.constantFrom(
      'Alba-Wachs 7',
      'alba wachs 7',
      'Zoë Öl',
      'Weir & Söhne',
      'MÜNSTER',
      'W-100',
    );
    const word = fc.constantFrom('melt', 'and', 'stir,', '75 °C', '(hot)', 'phase A');
    fc.assert(
      fc.property(fc.array(fc.oneof(name, word), { maxLength: 12 }), (words) => {
        const printed = shared(words.join(' ')).toLowerCase();
        for (const secret of ['wachs', 'zoë', 'weir', 'münster', 'w-100'])
          expect(printed).not.toContain(secret);
        expect(shared(shared(words.join(' ')))).toBe(shared(words.join(' ')));
      }),
      { numRuns: 60 },
    );
  });

  it('leaves the notes behind, and every figure as it is', () => {
    const from = { ...cream, notes: 'Weir wants more money.' };
    const to = forSharing(from, used, false);
    expect(to.notes).toBe('');
    expect(to.phases.map(({ lines }) => lines.map(({ ppm, materialId }) => [ppm, materialId]))).toEqual(
      from.phases.map(({ lines }) => lines.map(({ ppm, materialId }) => [ppm, materialId])),
    );
    expect(forSharing(content([]), {}, false)).toEqual(content([]));
  });

  it('names a material by its INCI names, or says that it has none', () => {
    expect(sheetName(wax, true)).toBe('Alba-Wachs 7');
    expect(sheetName(wax, false)).toBe('Cera Alba');
    expect(sheetName({ ...wax, composition: [] }, false)).toBe('raw material without an INCI name');
  });
});

describe('a sheet that is asked for', () => {
  const kinds = Object.keys(SHEETS) as SheetKind[];
  it.each(kinds)('%s has a title, and a file word that is plain', (kind) => {
    expect(SHEETS[kind].title).toMatch(/^[A-Z]/);
    expect(sheetFileName(kind, [])).toMatch(/^[a-z][a-z-]*\.pdf$/);
  });
  it('each kind has a file word of its own, so that no file takes another’s place', () => {
    expect(new Set(kinds.map((kind) => sheetFileName(kind, ['x']))).size).toBe(kinds.length);
  });
  it.each<[Record<string, unknown>, RegExp]>([
    [{ kind: 'poster' }, /Ask for a material, formula/],
    [{ kind: 'formula', formulaId: 'F-1' }, /./],
    [{ kind: 'comparison', materialIds: [] }, /at least two/],
    [
      { kind: 'comparison', materialIds: Array.from({ length: 201 }, () => nextId()) },
      /200 raw materials at most/,
    ],
    [{ kind: 'glossary', terms: ['no such word'] }, /not in the glossary/],
    [{ kind: 'batch', batchId: nextId(), paperSize: 'A5' }, /./],
    [{ kind: 'label', formulaId: nextId(), form: 'Mars' }, /./],
  ])('%j is refused', (asked, words) => {
    const { error } = sheetRequest.safeParse(asked);
    expect(error?.issues[0]?.message).toMatch(words);
  });
  it('has a name that every system takes, whatever its parts', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', maxLength: 60 }), { maxLength: 4 }), (parts) => {
        const name = sheetFileName('formula', parts);
        expect(name).toMatch(/^[a-z0-9]([a-z0-9.-]*[a-z0-9])?\.pdf$/);
        expect(name.length).toBeLessThanOrEqual(84);
      }),
      { numRuns: 100 },
    );
    expect(sheetFileName('formula', ['F-1', 'Crème Ö ½', '..', 'v2.1'])).toBe(
      'formula-f-1-creme-o-1-2-v2.1.pdf',
    );
  });
});

describe('a sign that the typeface lacks', () => {
  const latin = (code: number): boolean => code < 0x250;
  it('is named by its code, with every place where it stands, once', () => {
    const found = unprintableCharacters(
      [
        { text: '水 Aqua 水', where: 'line 1' },
        { text: 'Aqua', where: 'line 2' },
        { text: '水', where: 'note' },
        { text: '水', where: 'note' },
      ],
      latin,
    );
    expect(found).toEqual([{ character: '水', code: 'U+6C34', where: ['line 1', 'note'] }]);
  });
  it('becomes its code in print, and all others stay, in any text', () => {
    expect(codePointName('😀')).toBe('U+1F600');
    expect(printable('Öl 水', latin)).toBe('Öl [U+6C34]');
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => {
        const printed = printable(text, latin);
        expect(unprintableCharacters([{ text: printed, where: '' }], latin)).toEqual([]);
        expect(printable(printed, latin)).toBe(printed);
      }),
      { numRuns: 100 },
    );
  });
});

describe('small things of the batch record', () => {
  it.each([
    [999, 'mg'],
    [1_000, 'g'],
    [99_999_999, 'g'],
    [100_000_000, 'kg'],
  ])('%d mg in all are written in %s throughout', (totalMg, unit) => {
    expect(recordUnit(totalMg)).toBe(unit);
  });
  it('a step names its phases by the letters that they have now', () => {
    const [a, b, c] = [phase([]), phase([]), phase([])];
    const step = {
      ...{ id: nextId(), phaseIds: [c.id, a.id, 'gone'], instruction: '', temperatureC: null },
      speedRpm: null,
      minutes: null,
      lookFor: '',
      caution: '',
    };
    expect(stepPhases(content([a, b, c]), step)).toBe('A, C');
    expect(stepPhases(content([c, a]), step)).toBe('A, B');
    expect(stepPhases(content([b]), step)).toBe('');
  });
});
