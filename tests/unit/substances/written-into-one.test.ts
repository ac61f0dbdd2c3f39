import fc from 'fast-check';
import { endsOf, nameKey, namesWithin, plainName } from '@core/substances/names';
import { describe, expect, it } from 'vitest';

const NAMES = [
  'Phenoxyethanol',
  'Ethylhexylglycerin',
  '1,2-Hexanediol',
  'Prunus Amygdalus Dulcis (Sweet Almond) Oil',
  'Acrylates/C10-30 Alkyl Acrylate Crosspolymer',
  'Candelilla Cera',
  'Sodium Benzoate',
  'Andrographis Paniculata Extract',
];
const BETWEEN = [
  ' (and) ',
  ' and ',
  ' & ',
  ' (AND) ',
  ' [and] ',
  ' (&) ',
  ' (und) ',
  ' (et) ',
  ' (y) ',
  ' + ',
];

describe('names that a supplier wrote into one', () => {
  it('are read apart again, whatever stands between them', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...NAMES), { minLength: 1, maxLength: 5 }),
        fc.constantFrom(...BETWEEN),
        (names, between) => {
          expect(namesWithin(names.join(between))).toEqual(names);
        },
      ),
    );
  });

  it.each([
    'Andrographis Paniculata Extract',
    'Sand',
    'Candelilla Cera',
    'Acrylates/C10-30 Alkyl Acrylate Crosspolymer',
    '1,2-Hexanediol',
    'Hydrolyzed Vegetable Protein PG-Propyl Silanetriol',
    'Undecylenoyl Glycine',
    'CI 77891 (Titanium Dioxide)',
  ])('leave %s in one piece', (name) => expect(namesWithin(name)).toEqual([name]));

  it.each([
    ['', []],
    ['   ', []],
    ['(and)', []],
    ['Aqua (and)', ['Aqua']],
    ['(and) Aqua', ['Aqua']],
    ['Aqua (and) (and) Glycerin', ['Aqua', 'Glycerin']],
    ['Aqua(and)Glycerin', ['Aqua', 'Glycerin']],
    ['Mica (and) CI 77891 (Titanium Dioxide)', ['Mica', 'CI 77891 (Titanium Dioxide)']],
  ])('“%s” names %j', (name, within) => expect(namesWithin(name)).toEqual(within));
});

describe('brackets of another width', () => {
  it('are brackets', () => {
    expect(nameKey('Aqua（Water）')).toBe('aqua');
    expect(plainName('Aqua （Water）')).toBe('aqua');
  });
});

describe('how much of a share names are', () => {
  const part = (inci: string) => ({ inci, lowPpm: 200_000, highPpm: 300_000 });
  const isAqua = (name: string): boolean => name === 'Aqua';

  it.each([
    ['Aqua', 200_000, 300_000],
    ['Glycerin', 0, 0],
    ['Aqua (and) Glycerin', 0, 300_000],
    ['Glycerin (and) Aqua (and) Urea', 0, 300_000],
    ['Glycerin (and) Urea', 0, 0],
    ['Aqua (and) Aqua', 200_000, 300_000],
    ['', 0, 0],
  ])('of “%s” from %d to %d ppm is water', (inci, least, most) =>
    expect(endsOf(part(inci), isAqua)).toEqual({ least, most }),
  );

  it('is never more than the part, never less for meaning more names, and all of it where all are meant', () => {
    const share = fc.integer({ min: 0, max: 1_000_000 });
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...NAMES), { minLength: 1, maxLength: 5 }),
        fc.subarray(NAMES),
        fc.constantFrom(...NAMES),
        share,
        share,
        (names, meant, also, a, b) => {
          const of = { inci: names.join(' (and) '), lowPpm: Math.min(a, b), highPpm: Math.max(a, b) };
          const few = endsOf(of, (name) => meant.includes(name));
          const more = endsOf(of, (name) => meant.includes(name) || name === also);
          expect(few.least).toBeLessThanOrEqual(few.most);
          expect(few.most).toBeLessThanOrEqual(of.highPpm);
          expect(more.least).toBeGreaterThanOrEqual(few.least);
          expect(more.most).toBeGreaterThanOrEqual(few.most);
          expect(endsOf(of, () => true)).toEqual({ least: of.lowPpm, most: of.highPpm });
          expect(endsOf(of, () => false)).toEqual({ least: 0, most: 0 });
        },
      ),
    );
  });
});

describe('a name as tables spell it', () => {
  it.each([
    ['  Sodium   Benzoate ', 'sodium benzoate'],
    ['SODIUM BENZOATE (E 211)', 'sodium benzoate'],
    ['Prunus Amygdalus Dulcis (Sweet Almond) Oil', 'prunus amygdalus dulcis oil'],
    ['2-Bromo-2-Nitropropane-1,3-Diol', '2-bromo-2-nitropropane-1,3-diol'],
    ['Phénoxyéthanol', 'phenoxyethanol'],
    ['Aloe (a (b) c) Juice', 'aloe juice'],
    ['', ''],
  ])('“%s” is “%s”', (name, plain) => expect(plainName(name)).toBe(plain));

  it('takes a capital Greek letter for the small one', () => {
    expect(nameKey('Α-Pinene')).toBe(nameKey('α-Pinene'));
    expect(nameKey('Β-Carotene')).toBe('beta carotene');
  });

  it('keeps what tells substances apart, and is the same when taken twice', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (name) => {
        expect(plainName(plainName(name))).toBe(plainName(name));
        expect(nameKey(nameKey(name))).toBe(nameKey(name));
      }),
    );
    expect(plainName('PEG-4')).not.toBe(plainName('PEG-40'));
  });
});
