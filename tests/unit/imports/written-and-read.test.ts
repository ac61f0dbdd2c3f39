import fc from 'fast-check';
import { currencyOf, dateOf, dayOrderOf, moneyOf } from '@core/imports/money-and-dates';
import { namesOf } from '@core/imports/names';
import { plain, saysNothing } from '@core/imports/plain';
import { decimalMarkOf, quantityOf, type DecimalMark } from '@core/imports/quantity';
import { readCell } from '@core/imports/read-cell';
import { MATERIAL_TARGETS } from '@core/imports/material-targets';
import { targetOf } from '@core/imports/targets';
import { inUnit, isUnitFor } from '@core/imports/units';
import { wordFor } from '@core/imports/words-of';
import { formatMoney } from '@core/locale/money';
import { decimalSign, formatNumber } from '@core/locale/numbers';
import { CURRENCIES, minorDigits } from '@core/quantities/money';
import { LANGUAGE_REGIONS } from '@core/settings/settings';
import { describe, expect, it } from 'vitest';

const regions = fc.constantFrom(...LANGUAGE_REGIONS);
const markOf = (region: (typeof LANGUAGE_REGIONS)[number]): DecimalMark => decimalSign(region) as DecimalMark;
const figures = fc
  .tuple(fc.integer({ min: 0, max: 99_999_999 }), fc.constantFrom(1, 10, 100, 1000, 10_000))
  .map(([whole, by]) => whole / by);

describe('a number as any region writes it', () => {
  it('is read as that number once the decimal mark is known, alone, with its unit, and as a range', () => {
    fc.assert(
      fc.property(regions, figures, figures, (region, a, b) => {
        const mark = markOf(region);
        const written = (value: number): string => formatNumber(value, region, { min: 0, max: 4 });
        expect(quantityOf(written(a), mark)).toEqual({ ok: true, low: null, value: a, high: null, unit: '' });
        expect(quantityOf(`${written(a)} %`, mark)).toMatchObject({ value: a, unit: '%' });
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(quantityOf(`${written(low)} – ${written(high)} °C`, mark)).toEqual({
          ...{ ok: true, low, value: null, high, unit: '°c' },
        });
        expect(quantityOf(`≤ ${written(a)}`, mark)).toMatchObject({ low: null, value: null, high: a });
        expect(quantityOf(`> ${written(a)}`, mark)).toMatchObject({ low: a, value: null, high: null });
      }),
      { numRuns: 300 },
    );
  });

  it('is never read as another one where the mark is not known: it is that number, or refused', () => {
    fc.assert(
      fc.property(regions, figures, (region, value) => {
        const read = quantityOf(formatNumber(value, region, { min: 0, max: 4 }), null);
        if (read.ok) expect(read.value).toBe(value);
        else expect(read.message).toContain('say which mark');
      }),
      { numRuns: 300 },
    );
  });

  it('shows the mark of its table, or none, and never the other one', () => {
    fc.assert(
      fc.property(regions, fc.array(figures, { maxLength: 6 }), (region, some) => {
        const told = decimalMarkOf(some.map((one) => formatNumber(one, region, { min: 0, max: 4 })));
        expect([null, markOf(region)]).toContain(told);
      }),
      { numRuns: 200 },
    );
  });
});

describe('an amount of money as any region writes it', () => {
  it('is that amount in that currency, or asks for the currency: it is never another one', () => {
    const amounts = fc.integer({ min: 0, max: 99_999_999 });
    fc.assert(
      fc.property(regions, fc.constantFrom(...CURRENCIES), amounts, (region, currency, minor) => {
        const written = formatMoney(minor, currency, region);
        const read = moneyOf(written, markOf(region));
        if (read.ok) {
          expect(read.amount, written).toBeCloseTo(minor / 10 ** minorDigits(currency), 6);
          expect(read.currency, written).toBe(currency);
        } else {
          expect(read.message, written).toContain('which currency');
          // Only a sign that several countries have is asked about.
          expect(written).toMatch(/(^|[\d\s])[$¥]|[$¥]$|kr|C\$/);
        }
      }),
      { numRuns: 400 },
    );
  });

  it.each(CURRENCIES)('%s is known by its letters, in any case', (code) => {
    expect([currencyOf(code), currencyOf(` ${code.toLowerCase()} `)]).toEqual([code, code]);
    expect(moneyOf(`12.50 ${code}`, '.')).toEqual({ ok: true, amount: 12.5, currency: code });
    expect(moneyOf(`${code} 12.50 / kg`, '.')).toEqual({ ok: true, amount: 12.5, currency: code });
  });

  it.each(['$', 'kr', '¥', 'Rs', 'F'])('“%s” stands for several: it is asked for', (sign) => {
    expect(currencyOf(sign)).toBeNull();
    expect(moneyOf(`${sign} 120`, '.').ok).toBe(false);
  });
});

describe('a day as it may be written', () => {
  const days = fc.integer({ min: 0, max: 20_000 }).map((n) => new Date(Date.UTC(2000, 0, 1 + n)));
  const two = (n: number): string => String(n).padStart(2, '0');

  it('is that day in the order of its table, and asked for where it may be two', () => {
    fc.assert(
      fc.property(days, fc.constantFrom('/', '-', '.'), (day, sign) => {
        const iso = day.toISOString().slice(0, 10);
        const [y, m, d] = [day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate()];
        expect(dateOf(iso, null)).toEqual({ ok: true, date: iso });
        expect(dateOf([two(d), two(m), y].join(sign), 'day first')).toEqual({ ok: true, date: iso });
        expect(dateOf([m, d, y].join(sign), 'month first')).toEqual({ ok: true, date: iso });
        const doubtful = [d, m, y].join(sign === '.' ? '/' : sign);
        const read = dateOf(doubtful, null);
        if (d <= 12 && d !== m) expect(read.ok, doubtful).toBe(false);
        else expect(read).toEqual({ ok: true, date: iso });
      }),
      { numRuns: 300 },
    );
  });

  it('is never made up: what is no day of the calendar is refused', () => {
    for (const text of ['2026-02-30', '31.04.2026', '2026-13-01', '0/1/2026', '29.02.2025', 'soon', '2026'])
      expect(dateOf(text, 'day first').ok, text).toBe(false);
    expect(dateOf('29.02.2024', null)).toEqual({ ok: true, date: '2024-02-29' });
  });

  it('tells the order of its table where one of the days does, and nothing where they contradict each other', () => {
    expect(dayOrderOf(['3/4/2026', '13/4/2026'])).toBe('day first');
    expect(dayOrderOf(['3/4/2026', '4/13/2026'])).toBe('month first');
    expect(dayOrderOf(['13/4/2026', '4/13/2026'])).toBeNull();
    expect(dayOrderOf(['3/4/2026'])).toBeNull();
  });
});

describe('units', () => {
  const ours = ['%', '°C', 'months', 'g/mL', 'mPa·s', 'kg'] as const;
  const spelled: Record<(typeof ours)[number], string[]> = {
    '%': ['%', 'ppm', 'mg/kg', '‰', 'g/kg', 'wt.%'],
    '°C': ['°C', '°F', 'C', 'degF'],
    months: ['months', 'Jahre', 'ans', 'yr', 'mois'],
    'g/mL': ['g/mL', 'kg/m3', 'kg/L', 'g/l'],
    'mPa·s': ['mPa·s', 'cP', 'Pa·s'],
    kg: ['kg', 'g', 'mg', 'lb', 't'],
  };

  it('turn a range as a whole: its ends stay in their order, and its middle between them', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(...ours)
          .chain((unit) => fc.tuple(fc.constant(unit), fc.constantFrom(...spelled[unit]))),
        fc.array(fc.integer({ min: -50, max: 5000 }), { minLength: 3, maxLength: 3 }),
        ([unit, written], numbers) => {
          const [low, value, high] = [...numbers].sort((a, b) => a - b) as [number, number, number];
          expect(isUnitFor(unit, written), written).toBe(true);
          const turned = inUnit(
            { low, value, high, unit: written.replace(/\s/g, '').toLowerCase() },
            unit,
            '',
          )!;
          expect(turned.low!).toBeLessThanOrEqual(turned.value!);
          expect(turned.value!).toBeLessThanOrEqual(turned.high!);
          expect(turned.unit).toBe(unit);
          // The same from the heading, where the cell names none.
          expect(inUnit({ low, value, high, unit: '' }, unit, written)).toEqual(turned);
        },
      ),
    );
  });

  it('of one size are one: 1,000 g, 1 kg and a thousandth of a tonne', () => {
    const kilos = (value: number, unit: string): number =>
      inUnit({ low: null, value, high: null, unit }, 'kg', '')!.value!;
    expect([kilos(1000, 'g'), kilos(1, 'kg'), kilos(0.001, 't'), kilos(1e6, 'mg')]).toEqual([1, 1, 1, 1]);
    // By definition: 32 °F and 212 °F, where ice melts and water boils.
    const celsius = (value: number): number =>
      inUnit({ low: null, value, high: null, unit: '°f' }, '°C', '')!.value!;
    expect([celsius(32), celsius(212), celsius(-40)]).toEqual([0, 100, -40]);
    expect(inUnit({ low: null, value: 1, high: null, unit: 'kg' }, '°C', '')).toBeNull();
  });
});

describe('names with their shares', () => {
  const inci = fc.constantFrom(
    'Aqua',
    'PEG-40 Stearate',
    'C12-15 Alkyl Benzoate',
    'Glyceryl Stearate',
    '1,2-Hexanediol',
  );
  it('are read back as they were written: parted by semicolons, shares in brackets', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(inci, fc.integer({ min: 1, max: 300 })), {
          minLength: 1,
          maxLength: 3,
          selector: ([name]) => name,
        }),
        fc.constantFrom<DecimalMark>(',', '.'),
        (parts, mark) => {
          const written = parts
            .map(([name, tenths]) => `${name} (${String(tenths / 10).replace('.', mark)} %)`)
            .join('; ');
          expect(namesOf(written, mark)).toEqual(
            parts.map(([name, tenths]) => ({ inci: name, lowPpm: tenths * 1000, highPpm: tenths * 1000 })),
          );
        },
      ),
    );
  });

  it('without a share may be what the others leave, and one alone is all of it', () => {
    expect(namesOf('Aqua (60 %); Glycerin', '.')[1]).toEqual({
      inci: 'Glycerin',
      lowPpm: 0,
      highPpm: 400_000,
    });
    expect(namesOf('1,2-Hexanediol', '.')).toEqual([{ inci: '1,2-Hexanediol', lowPpm: 1e6, highPpm: 1e6 }]);
  });
});

describe('what a cell says', () => {
  it('of nothing is nothing, for whatever it would fill', () => {
    for (const target of MATERIAL_TARGETS)
      for (const cell of [null, '', '  ', '–'])
        if (!['flag', 'known'].includes(target.reading.kind))
          expect(readCell(cell, target, '', { mark: '.', order: null, words: {} }), target.key).toEqual({
            ok: true,
            value: undefined,
          });
    expect(['n/a', 'k. A.', 'unbekannt', '---', 'TBD'].every(saysNothing)).toBe(true);
    expect(['0', 'no', 'none of it', 'Na'].map(saysNothing)).toEqual([false, false, false, true]);
  });

  it('in a word of ours is that word, whatever its case and accents; one that means two is asked for', () => {
    for (const target of MATERIAL_TARGETS) {
      const { reading } = target;
      if (reading.kind !== 'word' && reading.kind !== 'words') continue;
      for (const word of reading.words) {
        expect(wordFor(target, word, {}), `${target.key} ${word}`).toBe(word);
        expect(wordFor(target, ` ${word.toUpperCase()} `, {}), `${target.key} ${word}`).toBe(word);
        // What a maker told goes before.
        const told = { [target.key]: { [plain('own word')]: word } };
        expect(wordFor(target, 'Own Word', told)).toBe(word);
      }
      expect(wordFor(target, 'quite something else', {})).toBeNull();
    }
    expect(targetOf('charge').label).not.toBe('');
  });
});
