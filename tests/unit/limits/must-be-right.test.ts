import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { shareOfMost } from '@core/limits/judged';
import { blankLimit, type LimitContent } from '@core/limits/limit';
import { totalWords } from '@core/limits/words';
import { workingOfLimit } from '@core/limits/working';
import { EXAMPLES, judged, kept, situation, verdictOn } from './law';

const benzoate = make('Salt', 'Sodium Benzoate', { functions: ['preservative'] });
const benzoic = make('Acid', 'Benzoic Acid', { functions: ['preservative'] });
const face = situation({}, { kind: 'face cream' });
const shampoo = situation({ use: 'rinse-off' }, { kind: 'shampoo' });

/** Conversions by molar mass, IUPAC abridged weights; limits of Regulation (EC) No 1223/2009 as the values files have them. */
describe('limits counted as the law counts them', () => {
  it('counts sodium benzoate as benzoic acid', () => {
    // 0.55 × 122.123 / 144.105 = 0.46610
    expect(verdictOn('Benzoates', [[benzoate, 0.55]], face)).toEqual(['within', 0.4661]);
    expect(verdictOn('Benzoates', [[benzoate, 1.5]], shampoo)).toEqual(['within', 1.2712]);
    expect(verdictOn('Benzoates', [[benzoate, 1.5]], face)).toEqual(['above', 1.2712]);
  });

  it('takes for the limit what differs from it by less than molar masses are known, and says so', () => {
    // 0.59 × 122.123 / 144.105 = 0.5000005: one part in a million, from atomic weights of five digits. The trade doses
    // 0.59 % of the salt as 0.5 % of the acid; one step of the balance more is above.
    const [one] = judged([[benzoate, 0.59]], face).filter(({ limit }) => limit.subject === 'Benzoates');
    expect(one?.verdict).toBe('within');
    expect(totalWords(one!)).toBe('0.5\u00a0% as Benzoic Acid');
    expect(workingOfLimit(one!).cautions.join()).toContain('as exactly as molar masses are known');
  });

  it('never reads as the limit what passes it by little', () => {
    // 0.5901 × 122.123 / 144.105 = 0.500085
    const [one] = judged([[benzoate, 0.5901]], face).filter(({ limit }) => limit.subject === 'Benzoates');
    expect(one?.verdict).toBe('above');
    expect(totalWords(one!)).toBe('0.50009\u00a0% as Benzoic Acid');
    const [acid] = judged([[benzoic, 0.5001]], face).filter(({ limit }) => limit.subject === 'Benzoates');
    expect(acid?.verdict).toBe('above');
    expect(workingOfLimit(acid!).cautions.join()).not.toContain('molar masses');
  });

  it('sums acid and salt, over lines and blends', () => {
    // 0.4 + 0.4 × 0.84746 = 0.73898
    expect(
      verdictOn(
        'Benzoates',
        [
          [benzoic, 0.4],
          [benzoate, 0.4],
        ],
        face,
      ),
    ).toEqual(['above', 0.739]);
    const blend = make('Duo', ['Sodium Benzoate', 'Potassium Sorbate'], { functions: ['preservative'] });
    expect(
      verdictOn(
        'Benzoates',
        [
          [benzoic, 0.4],
          [blend, 0.8],
        ],
        face,
      ),
    ).toEqual(['above', 0.739]);
  });

  it('lets a blend be used at its own highest, and says what a range comes to at worst', () => {
    const blend = make('Blend', 'Benzyl Alcohol', {
      functions: ['preservative'],
      composition: [
        { inci: 'Benzyl Alcohol', lowPpm: 836_000, highPpm: 836_000 },
        { inci: 'Dehydroacetic Acid', lowPpm: 80_000, highPpm: 80_000 },
      ],
    });
    expect(verdictOn('Benzyl Alcohol', [[blend, 1.1]], face)).toEqual(['within', 0.9196]);
    const ranged = make('Ranged', 'Phenoxyethanol', {
      composition: [{ inci: 'Phenoxyethanol', lowPpm: 700_000, highPpm: 900_000 }],
    });
    const [one] = judged([[ranged, 1.2]], face).filter(({ limit }) => limit.subject === 'Phenoxyethanol');
    expect(one?.verdict).toBe('may be above');
    expect(one?.cautions.join()).toContain('worst case');
    expect(verdictOn('Phenoxyethanol', [[ranged, 1.5]], face)?.[0]).toBe('above');
  });

  it('sums the long parabens by their shares', () => {
    const propyl = make('P', 'Propylparaben');
    const butyl = make('B', 'Butylparaben');
    // 0.1 × 138.122 / 180.203 + 0.1 × 138.122 / 194.230 = 0.147761; / 0.14 = 105.5433 % of the limit
    expect(
      verdictOn(
        'Propyl- and butylparaben',
        [
          [propyl, 0.1],
          [butyl, 0.1],
        ],
        face,
      ),
    ).toEqual(['above', 105.5433]);
    expect(verdictOn('Propyl- and butylparaben', [[propyl, 0.18]], face)?.[0]).toBe('within');
    // 0.4 % as acid each, 0.8 % together: 0.44 % methylparaben is 0.399 % as acid.
    const methyl = make('M', 'Methylparaben');
    const ethyl = make('E', 'Ethylparaben');
    const all = judged(
      [
        [methyl, 0.44],
        [ethyl, 0.48],
      ],
      face,
    );
    expect(all.every(({ verdict }) => verdict === 'within')).toBe(true);
    expect(all.filter(({ limit }) => limit.subject === 'Methyl- and ethylparaben')).toHaveLength(2);
    expect(
      verdictOn(
        'Parabens',
        [
          [methyl, 0.44],
          [ethyl, 0.44],
          [propyl, 0.15],
        ],
        face,
      )?.[0],
    ).toBe('above');
  });

  it('has no share to sum of a substance of which nothing is allowed: any of it is too much, in figures that can be read', () => {
    const sum = { ...blankLimit('Propyl- and butylparaben'), of: 'group', percent: 0.14 } as const;
    const limits = [
      kept<LimitContent>({
        ...sum,
        counting: 'by shares of their limits',
        regions: ['EU'],
        source: 'invented',
      }),
      kept<LimitContent>({ ...blankLimit('Butylparaben'), percent: 0, regions: ['EU'], source: 'invented' }),
    ];
    const law = { substances: EXAMPLES.substances, limits };
    const [propyl, butyl] = [make('P', 'Propylparaben'), make('B', 'Butylparaben')];
    const [found] = judged(
      [
        [propyl, 0.07],
        [butyl, 0.01],
      ],
      face,
      law,
    );
    expect(found).toMatchObject({ verdict: 'above', total: { high: 50 } });
    expect(totalWords(found!)).toBe('0.01\u00a0% Butylparaben, of which nothing is allowed');
    expect(shareOfMost(found!)).toBeNull();
    const figures = workingOfLimit(found!).steps.map(({ result }) => result);
    expect(figures.every((one) => Number.isFinite(one))).toBe(true);
    expect(judged([[propyl, 0.07]], face, law)[0]).toMatchObject({ verdict: 'within', total: { high: 50 } });
  });

  it.each(['Titanium Dioxide', 'Zinc Oxide'])('counts %s with its nano form', (name) => {
    const bulk = make('Bulk', name, { functions: ['uv filter'] });
    const nano = make('Fine', `${name} (nano)`, { functions: ['uv filter'] });
    expect(
      verdictOn(
        name,
        [
          [bulk, 15],
          [nano, 11],
        ],
        face,
      )?.[0],
    ).toBe('above');
    expect(
      verdictOn(
        name,
        [
          [bulk, 15],
          [nano, 10],
        ],
        face,
      ),
    ).toEqual(['within', 25]);
    const spray = situation({}, { kind: 'sunscreen product', dispenser: 'propellant spray' });
    const against = judged([[nano, 5]], spray).filter(({ verdict }) => verdict === 'above');
    expect(against.map(({ limit }) => limit.rule)).toEqual(['prohibited']);
    expect(judged([[bulk, 5]], spray).filter(({ limit }) => limit.rule === 'prohibited')).toEqual([]);
  });

  it('knows triethanolamine rinsed off and left on', () => {
    const tea = make('T', 'Triethanolamine');
    expect(verdictOn('Trialkylamines and trialkanolamines', [[tea, 3]], face)).toEqual(['above', 3]);
    expect(verdictOn('Trialkylamines and trialkanolamines', [[tea, 3]], shampoo)?.[0]).toBe('notice');
  });

  it('counts zinc salts as zinc and retinoids as retinol', () => {
    const zinc = make('Z', 'Zinc Sulfate Heptahydrate');
    // 65.38 / 287.54 = 0.22738
    expect(verdictOn('Water-soluble zinc salts', [[zinc, 4.3]], face)).toEqual(['within', 0.9777]);
    expect(verdictOn('Water-soluble zinc salts', [[zinc, 4.5]], face)?.[0]).toBe('above');
    const palmitate = make('R', 'Retinyl Palmitate');
    const lotion = situation({}, { kind: 'body lotion' });
    // 0.1 × 0.5458 = 0.0546
    expect(verdictOn('Retinol and its esters', [[palmitate, 0.1]], lotion)).toEqual(['above', 0.0546]);
    expect(verdictOn('Retinol and its esters', [[palmitate, 0.1]], face)?.[0]).toBe('within');
  });

  it('tells an obligation that begins later from one that has ended', () => {
    const d5 = make('D', 'Cyclopentasiloxane');
    const [one] = judged([[d5, 5]], face).filter(({ limit }) => limit.subject === 'D4, D5 and D6');
    expect(one).toMatchObject({ time: 'coming', verdict: 'above' });
    const later = situation({ onDay: '2027-06-07' }, { kind: 'face cream' });
    const [then] = judged([[d5, 5]], later).filter(({ limit }) => limit.subject === 'D4, D5 and D6');
    expect(then?.time).toBe('in force');
  });

  it('lets Europe and Great Britain disagree', () => {
    const filter = make('H', 'Homosalate', { functions: ['uv filter'] });
    const at = (region: 'EU' | 'Great Britain' | 'US') => situation({ region }, { kind: 'face cream' });
    expect(verdictOn('Homosalate', [[filter, 9]], at('EU'))?.[0]).toBe('above');
    expect(verdictOn('Homosalate', [[filter, 9]], at('Great Britain'))?.[0]).toBe('within');
    expect(verdictOn('Homosalate', [[filter, 14]], at('US'))?.[0]).toBe('within');
  });

  it('does not know glycerin in ethylhexylglycerin', () => {
    const law = judged([[make('E', 'Ethylhexylglycerin'), 50]], face);
    expect(law).toEqual([]);
  });

  it('leaves open what hangs on a kind of product that is not said', () => {
    const kojic = make('K', 'Kojic Acid');
    const open = judged([[kojic, 0.5]], situation());
    expect(open.map(({ certain }) => certain)).toEqual([false, false]);
    const body = judged([[kojic, 0.5]], situation({}, { kind: 'body lotion' }));
    expect(body.map(({ limit, verdict }) => [limit.rule, verdict])).toEqual([['prohibited', 'above']]);
  });

  it('holds “less than” strictly, and “at most” not', () => {
    const wash = situation({ use: 'rinse-off' }, { kind: 'shampoo' });
    expect(verdictOn('D4 and D5', [[make('D', 'Cyclopentasiloxane'), 0.1]], wash)?.[0]).toBe('above');
    expect(verdictOn('Phenoxyethanol', [[make('P', 'Phenoxyethanol'), 1]], wash)?.[0]).toBe('within');
  });
});
