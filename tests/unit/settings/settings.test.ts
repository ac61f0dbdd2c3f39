import { savedSearch, SAVED_SEARCH } from '@core/searches/search';
import { SETTINGS } from '@core/settings/noun';
import { LANGUAGE_REGIONS, settings } from '@core/settings/settings';
import { formatDate } from '@core/locale/dates';
import { formatMoney } from '@core/locale/money';
import { decimalSign, formatNumber } from '@core/locale/numbers';
import { CURRENCIES } from '@core/quantities/money';
import { describe, expect, it } from 'vitest';

const said = (part: object): string[] =>
  settings.safeParse({ ...settings.parse({}), ...part }).error?.issues.map(({ message }) => message) ?? [];

describe('settings', () => {
  it('need nothing set before the first sheet, and are whole when one is', () => {
    const usual = settings.parse({});
    expect(settings.parse(usual)).toEqual(usual);
    expect(usual).toMatchObject({ paperSize: 'A4', readabilityMg: 100, overagePpm: 0, theme: 'system' });
    const one = settings.parse({ paperSize: 'LETTER' });
    expect(one).toEqual({ ...usual, paperSize: 'LETTER' });
    expect(SETTINGS.read({ paperSize: 'LETTER' })).toEqual(one);
  });

  it('each have a name for their history', () => {
    expect(Object.keys(SETTINGS.fields).sort()).toEqual(Object.keys(settings.shape).sort());
    const labels = Object.values(SETTINGS.fields).map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length);
    for (const [key, { blank }] of Object.entries(SETTINGS.fields))
      expect(blank, key).toEqual(settings.parse({})[key as keyof ReturnType<typeof settings.parse>]);
  });

  it.each([
    [{ readabilityMg: 0.5 }, 'A readability of less than a milligram cannot be entered.'],
    [{ readabilityMg: 0 }, 'A readability is above zero.'],
    [{ readabilityMg: 1_000_001 }, 'A step above 1 kg is no use for weighing.'],
    [{ overagePpm: 500_001 }, 'An overage above 50 % makes a different batch size.'],
    [{ overagePpm: -1 }, 'A share cannot be negative.'],
    [{ overagePpm: 0.5 }, 'A share must be a number of per cent with at most four decimals.'],
    [{ formulaPrefix: 'x'.repeat(13) }, 'Keep this to 12 characters or fewer.'],
    [{ batchPrefix: 'LOT\n' }, 'This stays on one line.'],
    [{ checkThresholds: { nano: 1_000_001 } }, 'A share cannot be more than 100 %.'],
    [{ currency: 'XXX' }, 'Choose a currency from the list.'],
  ])('%j is refused: %s', (part, message) => expect(said(part)).toEqual([message]));

  it('keep the space that a prefix ends in, and none that it begins with', () => {
    expect(settings.parse({ batchPrefix: '  LOT ' }).batchPrefix).toBe('LOT ');
    expect(settings.parse({ makerName: '  Fenwick & Daughters ' }).makerName).toBe('Fenwick & Daughters');
  });
});

describe('every language and region that can be chosen', () => {
  it.each(LANGUAGE_REGIONS)('%s writes numbers, money and days so that they can be read back', (region) => {
    const sign = decimalSign(region);
    expect([',', '.']).toContain(sign);
    const shown = formatNumber(1234567.5, region, 1);
    const [whole = '', fraction] = shown.split(sign);
    expect([whole.replace(/\D/g, ''), fraction]).toEqual(['1234567', '5']);
    const day = formatDate('2026-03-05', region);
    for (const part of ['2026', '5']) expect(day).toContain(part);
    for (const currency of CURRENCIES) {
      const digits = formatMoney(123_456, currency, region).replace(/\D/g, '');
      // The yen has no smaller unit.
      expect(digits, currency).toBe('123456');
    }
  });
});

describe('a saved search', () => {
  it('has a name that can be seen, and an address that is no book', () => {
    expect(savedSearch.parse({ name: ' Cationic ', query: 'charge=cationic' })).toEqual({
      ...{ name: 'Cationic', query: 'charge=cationic' },
    });
    const refused = (name: string, query = ''): string =>
      savedSearch.safeParse({ name, query }).error?.issues[0]?.message ?? '';
    expect(refused('')).toBe('Give the search’s name.');
    expect(refused('\u200b \u2060')).toBe('Give the search’s name.');
    expect(refused('Two\nlines')).toBe('A name stays on one line.');
    expect(refused('x'.repeat(81))).toBe('Keep this to 80 characters or fewer.');
    expect(refused('Long', 'x'.repeat(2001))).not.toBe('');
    expect(SAVED_SEARCH.titleOf({ name: 'Cationic', query: '' })).toBe('Cationic');
  });
});
