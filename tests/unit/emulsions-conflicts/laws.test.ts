import fc from 'fast-check';
import { chargeBearers, type Dose } from '@core/emulsions/conflicts/charge-bearers';
import { chargeConflicts, clash, type ChargeConflict } from '@core/emulsions/conflicts/charge-conflicts';
import { SALT_LOAD_PPM, saltPpm } from '@core/emulsions/conflicts/salt-load';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import * as shelf from '../checks/materials';

const SHELF: Material[] = [
  shelf.water(),
  shelf.mineralOil(),
  shelf.steareth21(),
  shelf.behentrimonium(),
  shelf.stearoylGlutamate(),
  shelf.stearicAcid(),
  shelf.lye(),
  shelf.carbomer(),
  shelf.saltCrystals(),
  make('Gum', 'Xanthan Gum'),
  make('Bitter', 'Magnesium Sulfate'),
  make('Quat gum', 'Guar Hydroxypropyltrimonium Chloride'),
  make('Hair film', 'Polyquaternium-10'),
  make('Soap', 'Potassium Oleate'),
  make('Leci', 'Lecithin', { charge: 'amphoteric', functions: ['emulsifier'] }),
  make('Blue', 'CI 42090', { functions: ['colorant'], solubleIn: ['water'] }),
  make('Clay', 'Hectorite'),
];
const doses = (materials: readonly Material[], ppm = 10_000): Dose[] =>
  materials.map((material) => ({ lineId: material.id, material, ppm }));
const some = fc.shuffledSubarray(SHELF);
const pair = ({ first, second, severity }: ChargeConflict) =>
  [first.name, second.name].sort().join(' + ') + severity;
const pairs = (materials: readonly Material[]) => chargeConflicts(doses(materials)).map(pair);

describe('charges that do not get on', () => {
  it('are the same whatever the order of the lines', () => {
    fc.assert(
      fc.property(some, (materials) => {
        // Beside a cationic polymer any one emulsifier of the network is named; there is one here.
        expect(pairs([...materials].reverse()).sort()).toEqual(pairs(materials).sort());
      }),
      { numRuns: 60 },
    );
  });

  it('stand with the worst first, each pair once, of two different lines', () => {
    fc.assert(
      fc.property(some, (materials) => {
        const found = chargeConflicts(doses(materials));
        const ranks = found.map((one) => ['forms a salt', 'may lose effect', 'watch'].indexOf(one.severity));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        const named = found.map((one) => [one.first.lineId, one.second.lineId].sort().join());
        expect(new Set(named).size).toBe(named.length);
        for (const { first, second } of found) expect(first.lineId).not.toBe(second.lineId);
      }),
      { numRuns: 60 },
    );
  });

  it('are not changed by what carries no charge, nor by another oil or water', () => {
    fc.assert(
      fc.property(some, (materials) => {
        const without = materials.filter(
          (one) => one.tradeName !== 'Water' && one.tradeName !== 'Lamp Oil Light',
        );
        const others = [
          make('Squalane', 'Squalane'),
          make('Glycerol', 'Glycerin'),
          make('Flower water', 'Rosa Damascena Flower Water'),
        ];
        expect(pairs([...without, ...others]).sort()).toEqual(pairs(without).sort());
      }),
      { numRuns: 40 },
    );
  });

  it('vanish when either of the two does, and no other is made by taking a line away, save of soap', () => {
    fc.assert(
      fc.property(some, (materials) => {
        const calm = materials.filter((one) => one.tradeName !== 'Lye 10');
        const all = pairs(calm);
        for (const gone of calm) {
          const left = pairs(calm.filter((one) => one !== gone));
          expect(left.sort()).toEqual(all.filter((words) => !words.includes(gone.tradeName)).sort());
        }
      }),
      { numRuns: 25 },
    );
  });

  it('need both at more than nothing', () => {
    const two = [shelf.behentrimonium(), shelf.carbomer()];
    expect(chargeConflicts(doses(two, 1))).toHaveLength(1);
    expect(chargeConflicts(doses(two, 0))).toEqual([]);
  });

  it('are judged the same from either side', () => {
    const bearers = chargeBearers(doses(SHELF));
    for (const one of bearers)
      for (const other of bearers) expect(clash(one, other)).toEqual(clash(other, one));
  });
});

describe('each kind of charge against each other', () => {
  const kinds: [string, Material][] = [
    ['soap', make('Soap', 'Sodium Stearate')],
    ['surfactant', shelf.stearoylGlutamate()],
    ['fatty acid', shelf.stearicAcid()],
    ['acrylic polymer', shelf.carbomer()],
    ['gum', make('Gum', 'Cellulose Gum')],
    ['particle', make('Clay', 'Bentonite')],
    ['dye', make('Blue', 'CI 42090', { functions: ['colorant'], solubleIn: ['water'] })],
  ];
  const severity = (one: Material, other: Material) =>
    chargeConflicts(doses([one, other]))[0]?.severity ?? 'none';

  // Rosen 2004 and the Carbomer monograph of the Handbook of Pharmaceutical Excipients (from memory).
  it.each([
    [
      'a quaternary',
      'Cetrimonium Chloride',
      [
        'forms a salt',
        'forms a salt',
        'watch',
        'forms a salt',
        'may lose effect',
        'may lose effect',
        'may lose effect',
      ],
    ],
    [
      'a quaternised gum',
      'Guar Hydroxypropyltrimonium Chloride',
      [
        'may lose effect',
        'may lose effect',
        'watch',
        'may lose effect',
        'may lose effect',
        'may lose effect',
        'may lose effect',
      ],
    ],
    [
      'a metal salt',
      'Calcium Chloride',
      ['forms a salt', 'none', 'none', 'may lose effect', 'none', 'none', 'none'],
    ],
    ['a non-ionic', 'Steareth-21', Array.from({ length: 7 }, () => 'none')],
  ])('%s', (_, inci, expected) => {
    const cation = make('Cation', inci);
    expect(kinds.map(([, anion]) => severity(cation, anion))).toEqual(expected);
  });

  it('calls each by what it is', () => {
    for (const [kind, material] of kinds)
      expect(chargeBearers(doses([material]))[0]).toMatchObject({ kind, charge: 'anionic' });
  });

  it('takes a shampoo of SLES and quaternised guar for what it is: a complex, not a salt that forbids it', () => {
    const shampoo = [
      make('Foam', 'Sodium Laureth Sulfate'),
      make('Silk', 'Guar Hydroxypropyltrimonium Chloride'),
    ];
    expect(chargeConflicts(doses(shampoo)).map((one) => one.severity)).toEqual(['may lose effect']);
  });
});

describe('how a charge is known', () => {
  const bearer = (...materials: Material[]) => chargeBearers(doses(materials))[0];

  it('a recorded cationic or amphoteric charge goes before every name', () => {
    const odd = make('Odd', 'Sodium Stearate', { charge: 'cationic' });
    expect(bearer(odd)).toMatchObject({ charge: 'cationic', why: 'as recorded on the material' });
    expect(bearer(make('Odd', 'Carbomer', { charge: 'amphoteric' }))?.charge).toBe('amphoteric');
  });

  it('a name that always carries a charge goes before a recorded non-ionic', () => {
    expect(bearer(make('SE', ['Glyceryl Stearate', 'Sodium Stearate'], { charge: 'non-ionic' }))?.kind).toBe(
      'soap',
    );
    expect(bearer(make('Gel', 'Carbomer', { charge: 'non-ionic' }))?.charge).toBe('anionic');
  });

  it('a cationic preservative counts, its counter-ion does not hide it', () => {
    expect(bearer(make('Guard', 'Hexamidine Diisethionate'))).toMatchObject({
      charge: 'cationic',
      kind: 'surfactant',
    });
  });

  it('an acid is soap beside any base, and beside none is the wax that it is', () => {
    const acid = shelf.stearicAcid();
    expect(bearer(acid)?.kind).toBe('fatty acid');
    expect(bearer(acid, shelf.lye())?.kind).toBe('soap');
    expect(bearer(acid, make('Amine', 'Triethanolamine'))?.kind).toBe('soap');
    const noBase = chargeBearers([...doses([acid]), ...doses([shelf.lye()], 0)]);
    expect(noBase[0]?.kind).toBe('fatty acid');
  });

  it('an oil-soluble colorant and a plain oil carry none', () => {
    expect(bearer(make('Red', 'CI 26100', { functions: ['colorant'], solubleIn: ['oil'] }))).toBeUndefined();
    expect(bearer(shelf.mineralOil())).toBeUndefined();
  });
});

describe('the salt that a line brings', () => {
  const brings = (material: Material, ppm: number, end: 'least' | 'most' = 'most') =>
    saltPpm({ material, ppm }, end);
  const ranged = {
    ...make('Sea', 'Aqua'),
    composition: [
      { inci: 'Aqua', lowPpm: 600_000, highPpm: 800_000 },
      { inci: 'Sodium Chloride', lowPpm: 150_000, highPpm: 250_000 },
      { inci: 'Magnesium Chloride', lowPpm: 50_000, highPpm: 150_000 },
    ],
  };

  it('is that of its composition, at either end of the ranges', () => {
    // By hand: 2 % of a material of 20 to 40 % salts is 0.4 to 0.8 % of the formula.
    expect(brings(ranged, 20_000, 'least')).toBe(4_000);
    expect(brings(ranged, 20_000, 'most')).toBe(8_000);
    expect(brings(make('Salt', 'Sodium Chloride'), 5_000)).toBe(5_000);
  });

  it('is the whole of what is recorded as an electrolyte without naming a salt, and nothing of the rest', () => {
    expect(brings(make('Minerals', 'Mystery', { functions: ['electrolyte'] }), 3_000)).toBe(3_000);
    expect(brings(shelf.water(), 700_000)).toBe(0);
    expect(brings(shelf.lye(), 700_000)).toBe(0);
  });

  it('is never more than the line, even where upper ends add up to more than all of it', () => {
    const over = { ...ranged, composition: ranged.composition.map((one) => ({ ...one, highPpm: 900_000 })) };
    expect(brings(over, 20_000, 'most')).toBe(20_000);
  });

  it('is in proportion to the line, and at the least end never above the most', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(ranged, ...SHELF),
        fc.integer({ min: 0, max: 1_000_000 }),
        (material, ppm) => {
          expect(brings(material, ppm, 'least')).toBeLessThanOrEqual(brings(material, ppm, 'most'));
          expect(brings(material, ppm, 'most')).toBeLessThanOrEqual(ppm);
          expect(brings(material, 2 * ppm)).toBeCloseTo(2 * brings(material, ppm), 6);
        },
      ),
      { numRuns: 50 },
    );
    expect(SALT_LOAD_PPM).toBe(1_000);
  });
});
