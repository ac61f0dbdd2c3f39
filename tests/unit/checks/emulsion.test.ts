import { describe, expect, it } from 'vitest';
import { figure, findingsOf, make } from './build';
import * as shelf from './materials';

describe('charge', () => {
  it('stops a cationic beside an anionic, and says they form a salt', () => {
    const [finding] = findingsOf('charge-conflict', [
      [shelf.behentrimonium(), 3],
      [shelf.stearoylGlutamate(), 1],
    ]);
    expect(finding).toMatchObject({ severity: 'stop' });
    expect(finding?.title).toContain('forms a salt');
    expect(finding?.lines).toHaveLength(2);
  });
  it('says nothing of a cationic beside a non-ionic', () => {
    expect(
      findingsOf('charge-conflict', [
        [shelf.behentrimonium(), 3],
        [shelf.steareth21(), 1],
      ]),
    ).toEqual([]);
  });
  it('notes an o/w emulsion on one kind of charge, not a mixed one', () => {
    expect(findingsOf('one-sided-charge', [[shelf.steareth21(), 3]])[0]?.title).toContain('heat');
    expect(findingsOf('one-sided-charge', [[shelf.stearoylGlutamate(), 3]])[0]?.title).toContain('frost');
    expect(
      findingsOf('one-sided-charge', [
        [shelf.steareth21(), 3],
        [shelf.stearoylGlutamate(), 1],
      ]),
    ).toEqual([]);
  });
  it('wants a non-ionic of higher HLB beside a cationic emulsifier', () => {
    const type = { productType: 'cationic o/w emulsion' } as const;
    expect(
      findingsOf(
        'cationic-partner',
        [
          [shelf.behentrimonium(), 3],
          [shelf.steareth2(), 1],
        ],
        type,
      ),
    ).toHaveLength(1);
    expect(
      findingsOf(
        'cationic-partner',
        [
          [shelf.behentrimonium(), 3],
          [shelf.steareth21(), 1],
        ],
        type,
      ),
    ).toEqual([]);
  });
});

describe('type of emulsion', () => {
  it('warns when nothing emulsifies, or nothing serves the type', () => {
    expect(findingsOf('emulsion-type', [[shelf.water(), 100]])).toHaveLength(1);
    expect(findingsOf('emulsion-type', [[shelf.sorbitanOleate(), 5]])[0]?.title).toContain('o/w');
    expect(
      findingsOf('emulsion-type', [[shelf.steareth21(), 5]], { productType: 'w/o emulsion' }),
    ).toHaveLength(1);
  });
  it('accepts a pair of which one serves, and asks nothing of a gel', () => {
    expect(
      findingsOf('emulsion-type', [
        [shelf.sorbitanOleate(), 1],
        [shelf.steareth21(), 3],
      ]),
    ).toEqual([]);
    expect(findingsOf('emulsion-type', [[shelf.water(), 100]], { productType: 'gel' })).toEqual([]);
  });
  it('wants a waxy and a liquid emulsifier for w/o', () => {
    const type = { productType: 'w/o emulsion' } as const;
    expect(findingsOf('water-in-oil-partners', [[shelf.sorbitanOleate(), 3]], type)[0]?.title).toContain(
      'waxy',
    );
    expect(findingsOf('water-in-oil-partners', [[shelf.steareth2(), 3]], type)[0]?.title).toContain('liquid');
    expect(
      findingsOf(
        'water-in-oil-partners',
        [
          [shelf.steareth2(), 2],
          [shelf.sorbitanOleate(), 2],
        ],
        type,
      ),
    ).toEqual([]);
    expect(findingsOf('water-in-oil-partners', [[shelf.sorbitanOleate(), 3]])).toEqual([]);
  });
});

describe('offered and required HLB', () => {
  const oil = shelf.mineralOil();
  it('warns where the mean of the emulsifiers is far from the oils’', () => {
    // 1 part HLB 15.5 and 3 parts HLB 4.9 offer 7.55; the oil’s sources run from 10 to 12.
    const [finding] = findingsOf('hlb-match', [
      [oil, 20],
      [shelf.steareth21(), 1],
      [shelf.steareth2(), 3],
    ]);
    expect(finding).toMatchObject({ severity: 'warn' });
    expect(finding?.title).toContain('7.5');
    expect(finding?.advice).toContain('higher-HLB');
  });
  it('says nothing within the spread of the sources, nor where an ionic makes the mean meaningless', () => {
    // 6 parts 15.5 and 4 parts 4.9 offer 11.26, inside 10 to 12.
    expect(
      findingsOf('hlb-match', [
        [oil, 20],
        [shelf.steareth21(), 3],
        [shelf.steareth2(), 2],
      ]),
    ).toEqual([]);
    expect(
      findingsOf('hlb-match', [
        [oil, 20],
        [shelf.steareth2(), 3],
        [shelf.stearoylGlutamate(), 1],
      ]),
    ).toEqual([]);
  });
  it('names the oils that it had to leave out', () => {
    const seed = make('Seedling', 'Camelina Sativa Seed Oil', {
      functions: ['emollient'],
      phaseOfUse: 'oil',
    });
    const [finding] = findingsOf('hlb-match', [
      [oil, 10],
      [seed, 10],
      [shelf.steareth2(), 3],
    ]);
    expect(finding?.advice).toContain('Seedling');
  });
});

describe('neutralising and salt', () => {
  it('wants a base for an acid emulsifier and for carbomer', () => {
    expect(
      findingsOf('neutralising', [
        [shelf.stearicAcid(), 3],
        [shelf.carbomer(), 0.2],
      ])[0]?.lines,
    ).toHaveLength(2);
    expect(findingsOf('neutralising', [[shelf.carbomer(), 0.2]])[0]?.advice).toContain('goggles');
    expect(
      findingsOf('neutralising', [
        [shelf.carbomer(), 0.2],
        [shelf.lye(), 0.8],
      ]),
    ).toEqual([]);
    const wax = make('Stear Wax E', 'Stearic Acid', { functions: ['thickener'] });
    expect(findingsOf('neutralising', [[wax, 2]])).toEqual([]);
  });
  it('warns of salt beside carbomer or what is recorded as sensitive', () => {
    expect(
      findingsOf('electrolyte', [
        [shelf.carbomer(), 0.3],
        [shelf.saltCrystals(), 0.5],
      ]),
    ).toHaveLength(1);
    const tolerant = { ...shelf.carbomer(), electrolyteTolerance: 'high' as const };
    expect(
      findingsOf('electrolyte', [
        [tolerant, 0.3],
        [shelf.saltCrystals(), 0.5],
      ]),
    ).toEqual([]);
    const tender = make('Tender', 'Cetearyl Olivate', {
      electrolyteTolerance: 'low',
      figures: { hlb: figure(9) },
    });
    expect(
      findingsOf('electrolyte', [
        [tender, 3],
        [shelf.saltCrystals(), 0.5],
      ]),
    ).toHaveLength(1);
    expect(findingsOf('electrolyte', [[shelf.carbomer(), 0.3]])).toEqual([]);
  });
});
