import { blankMaterial, material, materialContent } from '@core/materials/material';
import { describe, expect, it } from 'vitest';

const plain = () => blankMaterial('Brackwater Glycerin', 'Glycerin');

/** The messages about a material that a maker would enter, by place. */
function said(part: object): Record<string, string> {
  const read = materialContent.safeParse({ ...plain(), ...part });
  return Object.fromEntries((read.error?.issues ?? []).map((one) => [one.path.join('.'), one.message]));
}

describe('what can be entered about a raw material', () => {
  it('takes a plain one', () => {
    expect(said({})).toEqual({});
  });

  it('refuses a storage range whose ends are crossed, and takes equal ones', () => {
    const range = (minC: number | null, maxC: number | null) =>
      said({ storage: { ...plain().storage, minC, maxC } });
    expect(range(30, 5)).toEqual({
      'storage.minC': '“Not colder than” must not be above “not warmer than”.',
    });
    expect([range(5, 5), range(null, 5), range(5, null)]).toEqual([{}, {}, {}]);
  });

  it('asks for whole months in words', () => {
    expect(said({ storage: { ...plain().storage, shelfLifeMonths: 12.5 } })).toEqual({
      'storage.shelfLifeMonths': 'Write whole months, without decimals.',
    });
  });

  it.each(['', '  ', '\u200b\u200d', '\ufeff \u00ad', '\u3164', '\u2800', '\u{e0020}'])(
    'refuses a trade name of which nothing can be seen (%j)',
    (tradeName) => {
      expect(said({ tradeName })).toEqual({ tradeName: 'Give the trade name.' });
    },
  );

  it('takes separators pasted from a web page for what they are: a space in a name, a line in a note', () => {
    const read = materialContent.parse({
      ...plain(),
      tradeName: 'Marsh Wax\u2028P',
      notes: 'melt\u2028stir\u2029',
    });
    expect(read).toMatchObject({ tradeName: 'Marsh Wax P', notes: 'melt\nstir\n' });
  });

  it('keeps joiners inside names of scripts that need them', () => {
    expect(said({ tradeName: 'نمی\u200cدانم' })).toEqual({});
  });

  it('refuses the same allergen twice, however it is written', () => {
    const allergens = [
      { inci: 'Linalool', ppm: 100 },
      { inci: 'LINALOOL', ppm: 200 },
    ];
    expect(said({ allergens }).allergens).toMatch(/twice/);
  });

  it('takes ranges that overlap, and refuses lower ends beyond a whole', () => {
    const two = (lowA: number, lowB: number) =>
      said({
        composition: [
          { inci: 'Glycerin', lowPpm: lowA, highPpm: 900_000 },
          { inci: 'Aqua', lowPpm: lowB, highPpm: 900_000 },
        ],
      });
    expect(two(600_000, 400_000)).toEqual({});
    expect(two(600_000, 400_001).composition).toMatch(/at its lowest, add up to more than 100 %/);
  });

  it('a library still reads what it took in before these rules', () => {
    const stored = {
      ...plain(),
      tradeName: '\u200b',
      storage: { ...plain().storage, minC: 30, maxC: 5 },
      allergens: [
        { inci: 'Linalool', ppm: 100 },
        { inci: 'Linalool', ppm: 100 },
      ],
      id: '0195c7a0-0000-7000-8000-000000000001',
      revision: 1,
      createdAt: '2026-01-01T00:00:00.000Z',
      updatedAt: '2026-01-01T00:00:00.000Z',
    };
    expect(material.safeParse(stored).success).toBe(true);
  });
});
