import { keepingOf } from '@core/datasheets/shelf-life';
import { keptFrom, storageTemperatures } from '@core/datasheets/storage-words';
import { storageSaid } from '@core/datasheets/read-value';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const span = (text: string) => {
  const ends = storageTemperatures(text);
  return ends && [ends.low, ends.high];
};

describe('between which temperatures a sheet says to keep a material', () => {
  it.each<[string, [number | null, number | null]]>([
    ['Store between 5 and 25 °C', [5, 25]],
    ['5–25 °C', [5, 25]],
    ['from 2 °C to 8 °C', [2, 8]],
    ['Bei 15 bis 25 °C lagern', [15, 25]],
    ['entre 5 et 25 °C', [5, 25]],
    ['entre 5 y 25 °C', [5, 25]],
    ['-20 to -10 °C', [-20, -10]],
    ['above 10 °C and below 30 °C', [10, 30]],
    ['not below 5 °C and not above 25 °C', [5, 25]],
    ['minimum 5 °C, maximum 30 °C', [5, 30]],
    ['Store below 25 °C', [null, 25]],
    ['Nicht einfrieren. Unter 25 °C lagern', [null, 25]],
    ['ne dépassant pas 30 °C', [null, 30]],
    ['no superior a 30 °C', [null, 30]],
    ['a menos de 25 °C', [null, 25]],
    ['> 5 °C', [5, null]],
    ['mindestens 15 °C', [15, null]],
  ])('%s', (text, ends) => {
    expect(span(text)).toEqual(ends);
  });

  it.each<[string, [number | null, number | null]]>([
    ['Do not store below 5 °C', [5, null]],
    ['never keep under 10 °C', [10, null]],
    ['avoid temperatures below 0 °C', [0, null]],
    ['nicht bei Temperaturen unter 5 °C lagern', [5, null]],
    ['Temperaturen unter 5 °C vermeiden', [5, null]],
    ['ne pas stocker en dessous de 5 °C', [5, null]],
    ['no almacenar por debajo de 5 °C', [5, null]],
    ['Do not store above 30 °C', [null, 30]],
    ['should not be stored at temperatures above 40 °C', [null, 40]],
    ['Temperaturen über 30 °C vermeiden', [null, 30]],
    ['ne pas exposer à une température supérieure à 30 °C', [null, 30]],
    ['nicht unter 10 °C', [10, null]],
    ['nicht über 25 °C', [null, 25]],
  ])('what it denies is the other end: %s', (text, ends) => {
    expect(span(text)).toEqual(ends);
  });

  it.each([
    'bei Raumtemperatur',
    'room temperature (20 °C)',
    '20 ± 5 °C',
    '41 – 77 °F',
    '5–25 °C, for a short time up to 40 °C',
    '2–8 °C or 15–25 °C',
    'Store below 25 °C. Melt at 70 °C before use.',
    'below 150 °C',
    'keep cool',
    '',
  ])('is left out where it is not told clearly: “%s”', (text) => {
    expect(span(text)).toBeNull();
  });

  it('is the same in either order of its words, for every span of a store room', () => {
    fc.assert(
      fc.property(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 1, max: 30 }), (low, more) => {
        const high = low + more;
        for (const text of [
          `${low} – ${high} °C`,
          `between ${low} and ${high} °C`,
          `${low} °C bis ${high} °C`,
          `above ${low} °C and below ${high} °C`,
          `below ${high} °C, above ${low} °C`,
        ])
          expect(span(text), text).toEqual([low, high]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('what it is kept from', () => {
  it.each<[string, string[]]>([
    ['Protect from light and moisture.', ['light', 'moisture']],
    ['Keep away from heat', ['heat']],
    ['protected against frost', ['frost']],
    ['vor Frost und Licht schützen', ['frost', 'light']],
    ['vor direkter Sonneneinstrahlung geschützt', ['light']],
    ['à l’abri de la lumière', ['light']],
    ['Proteger de la luz y la humedad', ['light', 'moisture']],
    ['The material is sensitive to light', ['light']],
    ['It is not sensitive to light', []],
    ['light yellow liquid', []],
    ['keep dry', []],
  ])('%s', (text, words) => {
    expect(keptFrom(text)).toEqual(words);
  });

  it('each once, whatever the order, and beside the temperatures of the same sentence', () => {
    expect(keptFrom('Protect from light. Protect from light and frost.')).toEqual(['light', 'frost']);
    expect(
      storageSaid('Store at 5–25 °C, protected from frost.').map(({ key, value, sure }) => [
        key,
        value,
        sure,
      ]),
    ).toEqual([
      ['storage.range', { low: 5, value: null, high: 25 }, 'sure'],
      ['storage.keepFrom', ['frost'], 'likely'],
    ]);
    expect(storageSaid('Store in the original container.')).toEqual([]);
  });
});

describe('how long a sheet says that it keeps', () => {
  it.each<[string, number | null, number | null]>([
    ['24 months', 24, null],
    ['2 years', 24, null],
    ['1.5 years', 18, null],
    ['2 Jahre (24 Monate)', 24, null],
    ['18 meses', 18, null],
    ['12 mois non entamé', 12, null],
    ['24 Monate ungeöffnet, 6 Monate nach Anbruch', 24, 6],
    ['36 months unopened; 12 months after opening', 36, 12],
    ['2 years in the unopened container and 6 months after opening', 24, 6],
    ['6 months once opened', null, 6],
    ['12 Monate vor dem Öffnen', 12, null],
    ['Shelf life 24 months. After opening use within 3 months.', 24, 3],
  ])('%s', (text, unopened, opened) => {
    expect(keepingOf(text)).toEqual({ unopened, opened });
  });

  it.each(['24 to 36 months', '2–3 years', '24 bis 36 Monate', '12 ou 24 mois'])(
    'of “%s” neither is sure, least of all the longer',
    (text) => {
      expect(keepingOf(text)).toEqual({ unopened: null, opened: null });
    },
  );

  it.each(['730 days', '0 months', '20 years', '1.3 years', '12M', '24 months; 36 months', 'long', ''])(
    '“%s” says none',
    (text) => {
      expect(keepingOf(text)).toEqual({ unopened: null, opened: null });
    },
  );

  it('what stands beside “after opening” as a label is of an opened one', () => {
    expect(keepingOf('6 months', true)).toEqual({ unopened: null, opened: 6 });
  });
});
