import { describe, expect, it } from 'vitest';
import { blankTarget } from '@core/formulas/formula';
import { figure, findingsOf, make, range } from './build';
import * as shelf from './materials';

const atPh = (phLow: number, phHigh: number) => ({ target: { ...blankTarget(), phLow, phHigh } });

describe('dose, not presence', () => {
  it('0.001 % of phenoxyethanol preserves nothing; its recorded lowest use does', () => {
    const [finding] = findingsOf('no-preservative', [
      [shelf.water(), 99],
      [shelf.phenoxyethanol(), 0.001],
    ]);
    expect(finding).toMatchObject({ severity: 'warn' });
    expect(finding?.title).toContain('Too little to preserve');
    const usage = {
      minPpm: 4_000,
      typicalPpm: null,
      maxPpm: null,
      provenance: 'supplier',
      source: '',
    } as const;
    const known = { ...shelf.phenoxyethanol(), usage };
    const at = (percent: number) =>
      findingsOf('no-preservative', [
        [shelf.water(), 99],
        [known, percent],
      ]);
    expect(at(0.39)).toHaveLength(1);
    expect(at(0.4)).toEqual([]);
  });

  it('ethanol above 20 % by volume, or bound water, comes before “no preservative”', () => {
    const ethanol = make('Spirit', 'Alcohol Denat.', { functions: ['solvent'] });
    const severity = (rows: Parameters<typeof findingsOf>[1]) =>
      findingsOf('no-preservative', rows)[0]?.severity;
    // By hand: 17 g / 0.789 = 21.5 mL beside 83 mL of water is 20.6 %; 16 g beside 84 is 19.4 %.
    expect(
      severity([
        [shelf.water(), 83],
        [ethanol, 17],
      ]),
    ).toBe('note');
    expect(
      severity([
        [shelf.water(), 84],
        [ethanol, 16],
      ]),
    ).toBe('warn');
    const glycerin = make('Sweet', 'Glycerin', { functions: ['humectant'] });
    // Norrish by hand for 75 % glycerin: xw = 0.630, aw = 0.630 · exp(−1.16 · 0.370²) = 0.54.
    const [dry] = findingsOf('no-preservative', [
      [shelf.water(), 25],
      [glycerin, 75],
    ]);
    expect(dry).toMatchObject({ severity: 'note' });
    expect(dry?.advice).toContain('0.54');
    expect(
      severity([
        [shelf.water(), 60],
        [glycerin, 40],
      ]),
    ).toBe('warn');
  });

  it('0.0001 % of caustic neutralises nothing, and citric acid takes up base first', () => {
    const stearic = { ...shelf.stearicAcid(), figures: { acidValue: figure(206) } };
    const beads = make('Beads', 'Sodium Hydroxide', { functions: ['base'] });
    const at = (rows: Parameters<typeof findingsOf>[1]) => findingsOf('neutralising', rows);
    // By hand: 3 g · 206/56.105 = 11.02 mmol of acid; 0.0001 g of NaOH is 0.0025 mmol, 0.02 %.
    expect(
      at([
        [stearic, 3],
        [beads, 0.0001],
      ])[0]?.title,
    ).toMatch(/next to nothing/);
    // 0.1 g is 2.5 mmol: 23 %.
    expect(
      at([
        [stearic, 3],
        [beads, 0.1],
      ]),
    ).toEqual([]);
    const citric = make('Sour', 'Citric Acid', {
      functions: ['acid'],
      figures: { molarMass: figure(210.138), equivalents: figure(3) },
    });
    // 0.2 g of citric acid monohydrate is 2.86 mmol of acid groups: more than the 2.5 mmol of base.
    expect(
      at([
        [stearic, 3],
        [beads, 0.1],
        [citric, 0.2],
      ])[0]?.advice,
    ).toContain('first');
  });

  it('0.01 % of salt is no load; benzoate, sorbate and a chelator’s salt together are', () => {
    const at = (rows: Parameters<typeof findingsOf>[1]) =>
      findingsOf('electrolyte', [[shelf.carbomer(), 0.3], ...rows]);
    expect(at([[shelf.saltCrystals(), 0.01]])).toEqual([]);
    const salts: Parameters<typeof findingsOf>[1] = [
      [make('B', 'Sodium Benzoate'), 0.4],
      [make('S', 'Potassium Sorbate'), 0.25],
      [make('E', 'Disodium EDTA'), 0.1],
    ];
    expect(at(salts)[0]?.title).toContain('0.75 % of salt');
  });

  it('an organic acid is judged by its undissociated dose also inside a recorded window', () => {
    const benzoate = (percent: number) =>
      findingsOf(
        'preservative-ph',
        [
          [
            make('B', 'Sodium Benzoate', {
              functions: ['preservative'],
              figures: { pKa: figure(4.19), workingPh: range(2, 6.5) },
            }),
            percent,
          ],
        ],
        atPh(5.5, 6),
      );
    // By hand: 1/(1 + 10^1.81) = 1.53 %; of 0.5 % that is 0.0076 %, of 1.7 % as benzoic acid
    // (× 122.12 / 144.1) 0.022 %; the salt's own mass is not what acts.
    expect(benzoate(0.5)[0]).toMatchObject({ severity: 'warn' });
    expect(benzoate(0.5)[0]?.title).toContain('1.5 %');
    expect(benzoate(1.7)[0]).toMatchObject({ severity: 'note' });
  });

  it('of an acid that shares one amount with another name, says that its share must be asked for', () => {
    const blend = (inci: string, percent: number) =>
      findingsOf(
        'preservative-ph',
        [[make('B', inci, { functions: ['preservative'], figures: { pKa: figure(4.19) } }), percent]],
        atPh(5.5, 5.5),
      )[0];
    // By hand: 1/(1 + 10^1.31) = 4.67 %; of 1 % that is 0.0467 % where all of it is the acid.
    expect(blend('Benzoic Acid', 1)).toMatchObject({ severity: 'note' });
    expect(blend('Benzoic Acid', 1)?.advice).toContain('about 0.0467 %');
    const joined = blend('Benzyl Alcohol (and) Benzoic Acid', 1);
    expect(joined).toMatchObject({ severity: 'warn' });
    expect(joined?.advice).toContain('at most 0.0467 % of the formula');
    expect(joined?.advice).toContain('Ask for the share of each');
    // Whichever of the two it is, it is the acid or holds as much of it as its salt does (122.12 / 144.11).
    expect(blend('Benzoic Acid (and) Sodium Benzoate', 1)?.advice).toContain('about 0.0396 %');
  });

  it('takes the cautious end of a lone range, and says so', () => {
    const one = make('R', 'Benzoic Acid', { functions: ['preservative'], figures: { pKa: range(3.5, 5) } });
    expect(findingsOf('preservative-ph', [[one, 0.5]], atPh(4.6, 4.6))[0]?.advice).toContain(
      'lower end is taken',
    );
  });
});

describe('charges of actives', () => {
  it.each([
    'Hexamidine Diisethionate',
    'Chlorhexidine Digluconate',
    'Polyaminopropyl Biguanide',
    'Benzethonium Chloride',
    'Quaternium-80',
    'Ethyl Lauroyl Arginate HCl',
  ])('%s is cationic: beside an anionic surfactant it forms a salt', (inci) => {
    const cation = make('Active', inci, { functions: ['preservative'] });
    for (const anion of [
      'Sodium Trideceth Sulfate',
      'Sodium Lauryl Sulfoacetate',
      'Sodium Laureth-5 Carboxylate',
    ]) {
      const found = findingsOf('charge-conflict', [
        [cation, 0.2],
        [make('Suds', anion, { functions: ['surfactant'] }), 5],
      ]);
      expect(found[0]?.severity, anion).toBe('stop');
    }
  });

  it('behentrimonium with fatty alcohol and no non-ionic is a note, without either a warning', () => {
    const type = { productType: 'cationic o/w emulsion' } as const;
    const alcohol = make('Alcohol', 'Cetearyl Alcohol', { functions: ['thickener'] });
    expect(findingsOf('cationic-partner', [[shelf.behentrimonium(), 3]], type)[0]?.severity).toBe('warn');
    expect(
      findingsOf(
        'cationic-partner',
        [
          [shelf.behentrimonium(), 3],
          [alcohol, 4],
        ],
        type,
      )[0]?.severity,
    ).toBe('note');
  });
});
