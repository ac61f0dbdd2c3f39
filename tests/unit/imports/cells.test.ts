import { dateOf, dayOrderOf, moneyOf } from '@core/imports/money-and-dates';
import { namesOf } from '@core/imports/names';
import { decimalMarkOf, quantityOf } from '@core/imports/quantity';
import { readCell } from '@core/imports/read-cell';
import { targetOf } from '@core/imports/targets';
import { describe, expect, it } from 'vitest';

const WAYS = { mark: ',', order: null, words: {} } as const;
const value = (
  key: string,
  cell: Parameters<typeof readCell>[0],
  headed = '',
  ways: Parameters<typeof readCell>[3] = WAYS,
) => {
  const reading = readCell(cell, targetOf(key), headed, ways);
  return reading.ok ? reading.value : reading.message;
};

describe('the decimal mark of a table', () => {
  it('is what some of its numbers leave no doubt of', () => {
    expect(decimalMarkOf(['1.200', '5,8'])).toBe(',');
    expect(decimalMarkOf(['1,200', '5.85'])).toBe('.');
    expect(decimalMarkOf(['1.234,50'])).toBe(',');
    expect(decimalMarkOf(['1.200', '3', 'PEG-40'])).toBeNull();
    expect(decimalMarkOf(['5,8', '5.8'])).toBeNull();
  });
  it('three digits after one mark are thousands or decimals by it, and refused without', () => {
    expect(quantityOf('1.200', ',')).toMatchObject({ value: 1200 });
    expect(quantityOf('1.200', '.')).toMatchObject({ value: 1.2 });
    expect(quantityOf('0.123', ',')).toMatchObject({ value: 0.123 });
    expect(quantityOf('1,200', null)).toMatchObject({
      ok: false,
      message: expect.stringContaining('1200 or 1.200') as string,
    });
  });
});

describe('quantities', () => {
  it.each([
    ['5,8', { low: null, value: 5.8, high: null, unit: '' }],
    ['ca. 60 °C', { low: null, value: 60, high: null, unit: '°c' }],
    ['3–6', { low: 3, value: null, high: 6, unit: '' }],
    ['3 - 6 %', { low: 3, value: null, high: 6, unit: '%' }],
    ['3 % bis 6 %', { low: 3, value: null, high: 6, unit: '%' }],
    ['5 à 8', { low: 5, value: null, high: 8, unit: '' }],
    ['< 0,5', { low: null, value: null, high: 0.5, unit: '' }],
    ['≥ 95 %', { low: 95, value: null, high: null, unit: '%' }],
    ['max. 25°C', { low: null, value: null, high: 25, unit: '°c' }],
    ['-5', { low: null, value: -5, high: null, unit: '' }],
    ['−5 – 10', { low: -5, value: null, high: 10, unit: '' }],
    ['0,92 g/cm3', { low: null, value: 0.92, high: null, unit: 'g/cm3' }],
  ])('%s', (text, reading) => {
    expect(quantityOf(text, ',')).toEqual({ ok: true, ...reading });
  });
  it.each(['about right', '5 ± 1', '6–3', '', '3 % – 6 g', '5.8.3x', '12 34'])('refuses “%s”', (text) => {
    expect(quantityOf(text, ',').ok).toBe(false);
  });
});

describe('cells in the unit of their target', () => {
  it('per cent, thousandths and parts per million', () => {
    expect(value('usage.maxPpm', '2,5 %')).toBe(25_000);
    expect(value('usage.maxPpm', 2.5)).toBe(25_000);
    expect(value('usage.maxPpm', '500 ppm')).toBe(500);
    expect(value('usage.maxPpm', 5, '‰')).toBe(5_000);
  });
  it('years are months, kilograms a cubic metre grams a millilitre, Fahrenheit Celsius (212 °F boil water)', () => {
    expect(value('storage.shelfLifeMonths', '2 Jahre')).toBe(24);
    expect(value('storage.shelfLifeMonths', 3, 'years')).toBe(36);
    expect(value('figures.density', '920', 'kg/m³')).toEqual({ low: null, value: 0.92, high: null });
    expect(value('figures.meltingPoint', '212 °F')).toEqual({ low: null, value: 100, high: null });
  });
  it('a pack in kilograms, grams, pounds (0.45359237 kg)', () => {
    expect(value('offer.pack', '25 kg')).toBe(25_000_000);
    expect(value('offer.pack', 0.5)).toBe(500_000);
    expect(value('offer.pack', '500 g')).toBe(500_000);
    expect(value('offer.pack', '1 lb')).toBe(453_592);
    expect(value('offer.pack', '5 l')).toMatch(/no unit of Pack/);
  });
  it('a wrong unit, a range where one number belongs, an error of the spreadsheet, a date for a number', () => {
    expect(value('figures.hlb', '5 °C')).toMatch(/no unit of HLB/);
    expect(value('usage.maxPpm', '2–5 %')).toMatch(/takes one number/);
    expect(value('figures.hlb', { error: '#REF!' })).toMatch(/#REF!/);
    expect(value('figures.hlb', { date: '2026-05-08' })).toMatch(/This is a date/);
  });
  it('what says nothing is nothing', () => {
    for (const cell of [null, '', '-', '–', 'n/a', 'k. A.', '?'])
      expect(value('figures.hlb', cell)).toBeUndefined();
  });
});

describe('words', () => {
  it.each([
    ['nonion.', 'non-ionic'],
    ['nicht-ionisch', 'non-ionic'],
    ['NI', 'non-ionic'],
    ['Kationisch', 'cationic'],
    ['anion', 'anionic'],
    ['amphot.', 'amphoteric'],
    ['zwitterionic', 'amphoteric'],
  ])('charge “%s”', (text, word) => {
    expect(value('charge', text)).toBe(word);
  });
  it('what is not known is asked for, and then known', () => {
    const reading = readCell('geladen', targetOf('charge'), '', WAYS);
    expect(reading).toMatchObject({ ok: false, words: ['geladen'] });
    expect(value('charge', 'Geladen', '', { ...WAYS, words: { charge: { geladen: 'anionic' } } })).toBe(
      'anionic',
    );
  });
  it('several in a cell', () => {
    expect(value('functions', 'Emulgator, Verdicker / Tensid')).toEqual([
      'emulsifier',
      'thickener',
      'surfactant',
    ]);
    expect(value('functions', 'Emulgator und Duft')).toEqual(['emulsifier', 'fragrance']);
  });
  it.each(['n/a', 'k/A', '-', '?', 'unknown'])('“%s” among them is no word of its own', (nothing) => {
    expect(value('functions', `Emulgator; ${nothing}`)).toEqual(['emulsifier']);
    expect(value('functions', `${nothing}, Emulgator/Tensid`)).toEqual(['emulsifier', 'surfactant']);
  });
  it('yes and no', () => {
    expect(value('coldProcessable', 'ja')).toBe(true);
    expect(value('coldProcessable', 'x')).toBe(true);
    expect(value('coldProcessable', '-')).toBe(false);
    expect(value('certifiedOrganic', true)).toBe(true);
    expect(value('certifiedOrganic', 'vielleicht')).toMatch(/neither yes nor no/);
  });
});

describe('INCI names in a cell', () => {
  const names = (text: string) =>
    namesOf(text, ',').map(({ inci, lowPpm, highPpm }) => [inci, lowPpm / 1e4, highPpm / 1e4]);
  it('one is the whole; names with numbers, commas and strokes stay whole', () => {
    expect(names('PEG-40 Hydrogenated Castor Oil')).toEqual([['PEG-40 Hydrogenated Castor Oil', 100, 100]]);
    expect(names('1,2-Hexanediol')).toEqual([['1,2-Hexanediol', 100, 100]]);
    expect(names('Caprylic/Capric Triglyceride')).toEqual([['Caprylic/Capric Triglyceride', 100, 100]]);
    expect(names('Helianthus Annuus (Sunflower) Seed Oil')).toEqual([
      ['Helianthus Annuus (Sunflower) Seed Oil', 100, 100],
    ]);
    expect(names('Alkyl Benzoate (C12-15)')).toEqual([['Alkyl Benzoate (C12-15)', 100, 100]]);
  });
  it('several with shares, ranges and bounds', () => {
    expect(names('Phenoxyethanol (90 %), Ethylhexylglycerin (10 %)')).toEqual([
      ['Phenoxyethanol', 90, 90],
      ['Ethylhexylglycerin', 10, 10],
    ]);
    expect(names('Cetearyl Alcohol 70–80 %; Ceteareth-20 20-30 %')).toEqual([
      ['Cetearyl Alcohol', 70, 80],
      ['Ceteareth-20', 20, 30],
    ]);
    expect(names('Aqua (>95%); Citric Acid (<5%)')).toEqual([
      ['Aqua', 95, 100],
      ['Citric Acid', 0, 5],
    ]);
  });
  it('several without: each may be what the others leave', () => {
    expect(names('Glyceryl Stearate (and) PEG-100 Stearate')).toEqual([
      ['Glyceryl Stearate', 0, 100],
      ['PEG-100 Stearate', 0, 100],
    ]);
    expect(names('Glycerin (60 %); Aqua')).toEqual([
      ['Glycerin', 60, 60],
      ['Aqua', 0, 40],
    ]);
  });
  it('one that is said not to be known is no name, and the other is not the whole for it', () => {
    expect(names('Glycerin; n/a')).toEqual([['Glycerin', 0, 100]]);
    expect(names('Glycerin (60 %); -')).toEqual([['Glycerin', 60, 60]]);
    expect(names('n/a; -')).toEqual([]);
  });
});

describe('money and days', () => {
  it('an amount with its currency on either side', () => {
    expect(moneyOf('12,50 €', ',')).toEqual({ ok: true, amount: 12.5, currency: 'EUR' });
    expect(moneyOf('USD 1,234.50', '.')).toEqual({ ok: true, amount: 1234.5, currency: 'USD' });
    expect(moneyOf('18,40 €/kg', ',')).toEqual({ ok: true, amount: 18.4, currency: 'EUR' });
    expect(moneyOf('12', ',')).toEqual({ ok: true, amount: 12, currency: null });
    expect(moneyOf('$ 12', '.')).toMatchObject({ ok: false });
    expect(moneyOf('auf Anfrage', ',')).toMatchObject({ ok: false });
  });
  it('a day in the order of its table', () => {
    expect(dateOf('31.03.2026', null)).toEqual({ ok: true, date: '2026-03-31' });
    expect(dateOf('03/04/2026', 'month first')).toEqual({ ok: true, date: '2026-03-04' });
    expect(dateOf('03/04/2026', null)).toMatchObject({ ok: false });
    expect(dateOf('2026-3-4', null)).toEqual({ ok: true, date: '2026-03-04' });
    expect(dateOf('30.02.2026', null)).toMatchObject({ ok: false });
    expect(dayOrderOf(['03/04/2026', '25/04/2026'])).toBe('day first');
    expect(dayOrderOf(['03/04/2026', '04/25/2026'])).toBe('month first');
    expect(dayOrderOf(['03/04/2026'])).toBeNull();
  });
});
