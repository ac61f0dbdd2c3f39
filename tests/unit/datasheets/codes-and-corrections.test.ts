import { casNumbersOf } from '@core/datasheets/cas-numbers';
import { hazardsStated } from '@core/datasheets/hazard-statements';
import { compositionSaid } from '@core/datasheets/read-value';
import { changeOf, readTyped, typedText, withTaken, type FromSheet } from '@core/datasheets/take';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const FROM: FromSheet = { title: 'Invented sheet', today: '2026-11-29', currency: 'EUR' };
const part = (inci: string, low: number, high = low) => ({
  inci,
  lowPpm: low * 10_000,
  highPpm: high * 10_000,
});

describe('CAS numbers', () => {
  // Of PubChem, from memory: lactic acid, glycerol, water, phenoxyethanol, ethanol.
  it.each(['50-21-5', '56-81-5', '7732-18-5', '122-99-6', '64-17-5'])(
    '%s has the check digit that its others ask for',
    (cas) => {
      expect(casNumbersOf(`CAS ${cas}.`)).toEqual([cas]);
    },
  );

  it('any other last digit is a slip: then none of the line is taken', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('50-21-', '56-81-', '7732-18-', '122-99-'),
        fc.integer({ min: 0, max: 9 }),
        (begun, last) => {
          const right: Record<string, number> = { '50-21-': 5, '56-81-': 5, '7732-18-': 5, '122-99-': 6 };
          const found = casNumbersOf(`64-17-5, ${begun}${last}`);
          expect(found).toEqual(last === right[begun] ? ['64-17-5', `${begun}${last}`] : null);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('each once, with any dash; and no other number is one', () => {
    expect(casNumbersOf('122–99–6 / 122-99-6')).toEqual(['122-99-6']);
    expect(casNumbersOf('EC 204-589-7, batch 12-34, 1-2-3')).toEqual([]);
    expect(casNumbersOf('')).toEqual([]);
  });
});

describe('hazards by their codes (Globally Harmonized System, annex 3; from memory)', () => {
  it.each<[string, string[]]>([
    ['H225 Highly flammable liquid and vapour', ['flammable']],
    ['H271', ['oxidiser']],
    ['H314', ['caustic']],
    ['H315, H319, H335', ['irritant']],
    ['H 318', ['irritant']],
    ['H317 and H334', ['sensitiser']],
    ['H302 + H332', ['harmful undiluted']],
    ['H226, H315, H317', ['flammable', 'irritant', 'sensitiser']],
    ['H412, EUH066', []],
    ['Not classified as hazardous.', []],
    ['Nicht als gefährlich eingestuft', []],
    ['Non classé dangereux', []],
    ['', []],
  ])('%s', (text, words) => {
    expect(hazardsStated(text)).toEqual(words);
  });
});

describe('a composition that a sheet tells', () => {
  it('is sure where its shares can come to all of it, and asked about where they cannot', () => {
    expect(compositionSaid([part('Aqua', 60, 80), part('Glycerin', 20, 40)])[0]?.sure).toBe('sure');
    expect(compositionSaid([part('Aqua', 60), part('Glycerin', 20)])[0]).toMatchObject({
      sure: 'unsure',
      note: 'The shares do not come to 100 %: some of it may not be named.',
    });
  });
  it('is none where its shares pass 100 %, a name comes twice, or it is a sentence', () => {
    expect(compositionSaid([part('Aqua', 70), part('Glycerin', 40)])).toEqual([]);
    expect(compositionSaid([part('Aqua', 50), part('AQUA', 50)])).toEqual([]);
    expect(compositionSaid([part('See section 3', 100)])).toEqual([]);
    expect(compositionSaid([part('The product is a mixture', 100)])).toEqual([]);
    expect(compositionSaid([])).toEqual([]);
  });
});

describe('what a maker writes in the place of a value', () => {
  it.each<[string, unknown, string]>([
    ['figures.hlb', { low: 14, value: 15, high: 16 }, '15 (14 – 16)'],
    ['figures.hlb', { low: 14, value: null, high: 16 }, '14 – 16'],
    ['figures.hlb', { low: null, value: null, high: 16 }, '≤ 16'],
    ['figures.hlb', { low: 14, value: null, high: null }, '≥ 14'],
    ['usage.range', { low: 2, value: null, high: 5 }, '2 – 5'],
    ['composition', [part('Aqua', 70), part('Glycerin', 20, 30)], 'Aqua (70 %); Glycerin (20 – 30 %)'],
    ['composition', [part('Glycerin', 100)], 'Glycerin'],
    ['storage.keepFrom', ['light', 'frost'], 'light, frost'],
    ['storage.shelfLifeMonths', 24, '24'],
  ])('%s %j stands there as “%s”, and is read again as it was', (key, value, text) => {
    expect(typedText(key, value)).toBe(text);
    expect(readTyped(key, text)).toEqual({ ok: true, value });
  });

  it('any figure with its ends comes back as it was', () => {
    const number = fc.integer({ min: 1, max: 3900 }).map((n) => n / 100);
    fc.assert(
      fc.property(fc.tuple(number, number, number), fc.integer({ min: 0, max: 3 }), (three, shape) => {
        const [low, value, high] = [...three].sort((a, b) => a - b) as [number, number, number];
        const ends = [
          { low, value, high },
          { low, value: null, high },
          { low: null, value, high: null },
          { low: null, value: null, high },
        ][shape]!;
        expect(readTyped('figures.hlb', typedText('figures.hlb', ends))).toEqual({ ok: true, value: ends });
      }),
      { numRuns: 60 },
    );
  });

  it('may be empty, and is refused with what is wrong', () => {
    expect(typedText('figures.hlb', null)).toBe('');
    expect(readTyped('figures.hlb', '')).toEqual({ ok: true, value: undefined });
    expect(readTyped('figures.hlb', 'fifteen')).toMatchObject({
      ok: false,
      message: '“fifteen” is not a number, range or bound.',
    });
    expect(readTyped('figures.viscosity', '1,500')).toMatchObject({ ok: false });
    expect(readTyped('storage.range', '20')).toMatchObject({ ok: false });
    expect(readTyped('storage.shelfLifeMonths', '2 years')).toEqual({ ok: true, value: 24 });
  });
});

describe('a material with what is taken from a sheet', () => {
  const hlb = { low: null, value: 15, high: null };
  it('names the sheet and the page; what the maker wrote names the sheet alone', () => {
    const made = withTaken(null, [{ key: 'figures.hlb', value: hlb, page: 2 }], FROM);
    expect(made.figures.hlb).toMatchObject({
      ...hlb,
      provenance: 'supplier',
      source: 'Invented sheet, page 2',
    });
    const typed = withTaken(null, [{ key: 'figures.hlb', value: hlb, page: null }], FROM);
    expect(typed.figures.hlb?.source).toBe('Invented sheet');
  });

  it('loses both old ends of a use and a storage that are given anew', () => {
    const before = withTaken(
      null,
      [
        { key: 'usage.range', value: { low: 1, value: 2, high: 3 }, page: 1 },
        { key: 'storage.range', value: { low: 5, value: null, high: 25 }, page: 1 },
      ],
      FROM,
    );
    const after = withTaken(
      before,
      [
        { key: 'usage.range', value: { low: null, value: null, high: 5 }, page: 1 },
        { key: 'storage.range', value: { low: null, value: null, high: 30 }, page: 1 },
      ],
      FROM,
    );
    expect(after.usage).toMatchObject({
      minPpm: null,
      typicalPpm: null,
      maxPpm: 50_000,
      provenance: 'supplier',
    });
    expect([after.storage.minC, after.storage.maxC]).toEqual([null, 30]);
  });

  it('taking the same again changes nothing, and each change is told in words', () => {
    const one = { key: 'figures.hlb', value: hlb, page: 2 };
    const made = withTaken(null, [one], FROM);
    expect(changeOf(made, one, FROM, 'en-GB')).toEqual([]);
    const [told] = changeOf(made, { ...one, value: { ...hlb, value: 12.5 } }, FROM, 'de-DE');
    expect(told).toMatchObject({
      before: expect.stringContaining('15') as string,
      after: expect.stringContaining('12,5') as string,
    });
  });

  it('what is not taken stays as it was', () => {
    const before = withTaken(null, [{ key: 'tradeName', value: 'Alba 12', page: 1 }], FROM);
    const after = withTaken(before, [{ key: 'storage.keepFrom', value: ['light'], page: 1 }], FROM);
    expect(after).toEqual({ ...before, storage: { ...before.storage, keepFrom: ['light'] } });
    expect(withTaken(before, [], FROM)).toEqual(before);
  });
});
