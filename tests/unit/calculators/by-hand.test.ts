import { topicOf, TOPICS, type FormKey } from '@core/calculators/all-forms';
import { materialsOf } from '@core/calculators/calculation-request';
import type { FormRow } from '@core/calculators/form';
import { calculateForm } from '@core/calculators/form-calculation';
import { BLANK_HLB } from '@core/calculators/hlb-request';
import { BLANK_HLD, BLANK_LINE } from '@core/calculators/hld-request';
import { BLANK_NEUTRALISE } from '@core/calculators/neutralise-request';
import { BLANK_PRESERVE } from '@core/calculators/preserve-request';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const of = (form: FormKey, values: FormRow = {}, rows: FormRow[] = []) =>
  calculateForm({ of: 'form', form, values, rows });
const figure = (...asked: Parameters<typeof of>) => ({
  value: (key: string): number => of(...asked).results.find((one) => one.key === key)?.worked.value ?? NaN,
  says: (key: string): string | undefined => of(...asked).results.find((one) => one.key === key)?.says,
});
const repeated = (count: number, at: (index: number) => FormRow): FormRow[] =>
  Array.from({ length: count }, (_, index) => at(index));

describe('pH of a solution', () => {
  const IDEAL = { activities: 'none' };
  const amine = { name: 'triethanolamine', kind: 'base', pKa1: 7.76, concentration: 0.1 };
  const phosphate = { pKa1: 2.148, pKa2: 7.198, pKa3: 12.35, concentration: 0.1 };
  const pH = (values: FormRow, rows: FormRow[]): number => figure('solution-ph', values, rows).value('pH');

  it('of a weak base alone is half of pKw + pKa + log of its concentration (Martin’s Physical Pharmacy, from memory)', () => {
    // ½ × (14.00 + 7.76 − 1)
    expect(pH(IDEAL, [amine])).toBeCloseTo(10.38, 2);
  });

  it('of a base half taken by acid is its pKa; all of it, that of a weak acid', () => {
    expect(pH({ ...IDEAL, strongAnion: 0.05 }, [amine])).toBeCloseTo(7.76, 3);
    // ½ × (7.76 + 1)
    expect(pH({ ...IDEAL, strongAnion: 0.1 }, [amine])).toBeCloseTo(4.38, 2);
  });

  it('of a salt between two steps lies between their pKas', () => {
    // ½ × (2.148 + 7.198), and with water’s part √(K2 × (K3 × 0.1 + Kw) / 0.1) = 1.863e-10.
    expect(pH({ ...IDEAL, strongCation: 0.1 }, [phosphate])).toBeCloseTo(4.68, 1);
    expect(pH({ ...IDEAL, strongCation: 0.2 }, [phosphate])).toBeCloseTo(9.73, 2);
  });

  it('of strong acid or alkali alone is its own, beside a weak one of which there is none', () => {
    const none = { pKa1: 4.757, concentration: 0 };
    expect(pH({ ...IDEAL, strongCation: 0.1 }, [none])).toBeCloseTo(13, 1);
    expect(pH({ ...IDEAL, strongAnion: 0.01 }, [none])).toBeCloseTo(2, 3);
    expect(pH({ ...IDEAL, strongAnion: 0.01, strongCation: 0.01 }, [none])).toBeCloseTo(7, 1);
  });

  it('tells beside it how much hangs on activities, and is still told where they cannot be reckoned', () => {
    expect(figure('solution-ph', IDEAL, [amine]).says('pH')).toMatch(/^10\.38 with activities$/);
    expect(figure('solution-ph', {}, [amine]).says('pH')).toMatch(/^10\.38 without activities$/);
    // A brine of 12 mol/L: who left activities out was told to leave them out.
    const brine = { strongCation: 12, strongAnion: 12 };
    const concentrated = figure('solution-ph', { ...IDEAL, ...brine }, [amine]);
    expect(concentrated.value('pH')).toBeCloseTo(10.38, 2);
    expect(concentrated.says('pH')).toBe('too concentrated for activities: measure it');
    const refused = refusal(() => of('solution-ph', brine, [amine]), /activities cannot be computed/);
    expect(refused.advice).toMatch(/Compute without activities/);
  });

  it('asks for pKas from the left, in rising order', () => {
    const gap = refusal(
      () => of('solution-ph', IDEAL, [amine, { pKa1: 2, pKa3: 6, concentration: 0.1 }]),
      /A pKa between two others is empty/,
    );
    expect(gap.fields.map(({ path }) => path)).toEqual(['rows.1.pKa2']);
    refusal(
      () => of('solution-ph', IDEAL, [{ pKa1: 6, pKa2: 3, concentration: 0.1 }]),
      /The pKas 6, 3 do not rise/,
    );
  });
});

describe('a trend', () => {
  const readings = (...values: number[]): FormRow[] =>
    values.map((reading, index) => ({ month: [0, 3, 6, 9, 12, 18][index] ?? null, reading }));

  it('that meets no limit says so beside the confidence limit, or instead of it', () => {
    const flat = of('trend-shelf-life', { limit: 90 }, readings(100, 100.2, 99.9, 100.1, 100, 100.1));
    expect(flat.results.map(({ key }) => key)).toEqual(['life']);
    expect(flat.notes).toEqual(['The fitted line does not meet this limit later on.']);
    refusal(
      () => of('trend-shelf-life', { limit: 90 }, readings(100, 101, 102, 103)),
      /The confidence limit does not meet this limit/,
    );
    refusal(
      () => of('trend-shelf-life', { limit: 90 }, readings(85, 84, 83, 82)),
      /beyond the limit from the start/,
    );
  });

  it('without spread has no room between its line and the confidence limit', () => {
    const rows = readings(100, 101, 102, 103, 104, 106);
    const rising = figure('trend-shelf-life', { limit: 110, direction: 'increasing' }, rows);
    // A third of a unit a month from 100: 110 after 30 months.
    expect(rising.value('life')).toBeCloseTo(30, 6);
    expect(rising.value('crossing')).toBeCloseTo(30, 6);
  });

  it('through zero has a slope alone', () => {
    const line = of('trend-line', { line: 'zero' }, readings(0, 3, 6, 9));
    expect(line.results.map(({ key }) => key)).toEqual(['slope', 'slopeSe', 'residualSd', 'rSquared']);
    expect(line.results.map(({ worked }) => worked.value)).toEqual([1, 0, 0, 1]);
  });

  it('of readings at one time, or of two points, is none', () => {
    const once = [1, 2, 3].map((reading) => ({ month: 1, reading }));
    refusal(() => of('trend-line', {}, once), /All readings are at one time/);
    refusal(() => of('trend-crossing', { limit: 90 }, readings(100, 99)), /2 points has no spread/);
  });
});

describe('a calculation of packs', () => {
  it('counts whole packs: two and a half have no mean that a law speaks of', () => {
    refusal(() => of('lowest-mean', { nominal: 250, sd: 2, n: 2.5 }), /A sample of 2\.5 packs is none/);
    refusal(() => of('us-limits', { label: 100, n: 12.5 }), /A sample of 12\.5 packs is none/);
  });

  // Directive 76/211/EEC, Annex II: of 400 packs 30 are drawn; one may lie below T1, three may not, two ask for 30 more.
  it.each([
    [1, 'accepted', true],
    [2, 'second sample', null],
    [3, 'rejected', false],
  ] as const)('%i of 30 packs below T1: %s', (below, verdict, good) => {
    // Of 100 g 4.5 g may lack: T1 95.5 g, T2 91 g.
    const rows = repeated(30, (index) => ({ contents: index < below ? 95 : 101 }));
    const [found] = of('pack-check', { nominal: 100, batch: 400, opened: 'no' }, rows).verdicts ?? [];
    expect([found?.verdict, found?.good]).toEqual([verdict, good]);
  });

  it('one pack below T2 rejects all, though the mean is high', () => {
    const rows = repeated(30, (index) => ({ contents: index === 0 ? 90.9 : 110 }));
    const [found] = of('pack-check', { nominal: 100, batch: 400, opened: 'no' }, rows).verdicts ?? [];
    expect([found?.verdict, found?.good]).toEqual(['rejected', false]);
    expect(found?.why.join(' ')).toContain('1 below T2: none may be.');
  });

  it('full packs pass in the United States, and thirteen are no sample', () => {
    const [found] =
      of(
        'us-check',
        { label: 100 },
        repeated(12, () => ({ contents: 100.2 })),
      ).verdicts ?? [];
    expect([found?.verdict, found?.good]).toEqual(['passes', true]);
    refusal(
      () =>
        of(
          'us-check',
          { label: 100 },
          repeated(13, () => ({ contents: 100 })),
        ),
      /12, 24 or 48 packages; 13/,
    );
  });
});

describe('words beside a figure', () => {
  it('a lighter droplet rises, a heavier one sinks at the same speed, one of the same density stays', () => {
    const droplet = (dropletDensity: number) =>
      figure('creaming', { radius: 1, dropletDensity, mediumDensity: 1, viscosity: 1 });
    expect([0.9, 1, 1.1].map((density) => droplet(density).says('daily'))).toEqual([
      'rises (creams)',
      'stays',
      'sinks',
    ]);
    // 2 × 9.80665 × 100 × (1e-6)² / (9 × 0.001) m/s, × 86,400 s × 1000 mm.
    expect(droplet(0.9).value('daily')).toBeCloseTo(18.829, 3);
    expect(droplet(1.1).value('daily')).toBeCloseTo(droplet(0.9).value('daily'), 9);
  });

  it('ageing at the temperature of the shelf takes its time, and assumes no energy', () => {
    const { results } = of('accelerated', { real: 25, test: 25, q10: 2, weeks: 10 });
    expect(results.map(({ key, worked }) => [key, worked.value])).toEqual([['weeks', 10]]);
  });

  it('few weighings are said to be few, and a balance without spread is held by its readability', () => {
    const three = of(
      'repeatability',
      { readability: 0.1 },
      repeated(3, () => ({ weight: 1 })),
    );
    expect(three.notes).toEqual(['3 weighings are entered; the rule asks for ten at least.']);
    // USP 41: 2 × 0.41 d / 0.10 %, with d the readability.
    expect(three.results.find(({ key }) => key === 'minimum')?.worked.value).toBeCloseTo(82, 9);
    const ten = of(
      'repeatability',
      { readability: 0.1 },
      repeated(10, () => ({ weight: 1 })),
    );
    expect(ten.notes).toEqual([]);
    refusal(
      () => of('repeatability', { readability: 0.1 }, [{ weight: 1 }]),
      /One reading has no standard deviation/,
    );
  });

  it('without a density viscosity is reckoned by two rules, and the third is said to want it', () => {
    const { results, notes } = of('oil-viscosity', {}, [
      { parts: 1, viscosity: 8 },
      { parts: 1, viscosity: 64, density: 1 },
    ]);
    expect(results.map(({ key }) => key)).toEqual(['log', 'cube']);
    expect(notes).toContain('With every density Refutas’ rule is computed too.');
    refusal(() => of('oil-viscosity', {}, [{ parts: 0, viscosity: 8 }]), /There are no parts yet/);
    refusal(() => of('pit-mix', {}, [{ parts: 0, pit: 8 }]), /There are no parts by volume yet/);
  });

  it('where nothing grew the limit of detection is asked for, and growth is a reduction below nothing', () => {
    const refused = refusal(() => of('log-reduction', { initial: 1e6, final: 0 }), /must be more than zero/);
    expect(refused.advice).toMatch(/limit of detection/);
    expect(figure('log-reduction', { initial: 10, final: 1000 }).value('log')).toBeCloseTo(-2, 12);
  });

  it('ions whose charges do not cancel are told of, and a broken charge is refused', () => {
    const { results } = of('ionic-strength', {}, [{ concentration: 0.1, charge: 1 }]);
    expect(results[0]?.worked.cautions.join(' ')).toMatch(/charges do not cancel/);
    refusal(() => of('ionic-strength', {}, [{ concentration: 0.1, charge: 1.5 }]), /a charge of 1\.5/);
    refusal(() => of('ionic-strength', {}, [{ concentration: 0.1, charge: 0 }]), /a charge of 0/);
  });

  it('a stronger solution is not made by thinning', () => {
    const { results } = of('dilution', { now: 4, volume: 100, wanted: 10 });
    expect(results[0]?.worked.value).toBe(40);
    expect(results[0]?.worked.cautions.join(' ')).toMatch(/diluting cannot make it/);
  });

  it('water activity asks for what it is known by', () => {
    refusal(() => of('water-activity', { percent: 20, k: 0 }), /Molar mass is not entered yet/);
    refusal(() => of('water-activity', { known: 'molality', k: 0 }), /Molality is not entered yet/);
    // As many moles of solute as of water, Raoult: half.
    expect(
      figure('water-activity', { known: 'molality', molality: 1000 / 18.015, k: 0 }).value('activity'),
    ).toBeCloseTo(0.5, 3);
  });

  it('weighings that cannot be are refused by name', () => {
    refusal(() => of('pycnometer', { empty: 10, withWater: 10, withLiquid: 12 }), /Vessel with water/);
    refusal(() => of('pycnometer', { empty: 10, withWater: 20, withLiquid: 9 }), /Vessel with the liquid/);
    refusal(() => of('plummet', { inAir: 20, inWater: 25, inLiquid: 21 }), /Plummet in air/);
    refusal(() => of('scale-error', { class: 'III', e: 1, load: 1e6 }), /more than class III weighs/);
  });
});

describe('what a calculation reads from the library', () => {
  const [one, two] = ['01890000-0000-7000-8000-00000000000a', '01890000-0000-7000-8000-00000000000b'];
  it('is every material that it names, and none where none is', () => {
    expect(materialsOf({ ...BLANK_HLB, knownMaterialId: one })).toEqual([one]);
    expect(materialsOf(BLANK_HLB)).toEqual([]);
    const line = (materialId: string | null) => ({ ...BLANK_LINE, materialId });
    expect(materialsOf({ ...BLANK_HLD, oils: [line(one), line(null)], surfactants: [line(two)] })).toEqual([
      one,
      two,
    ]);
    expect(materialsOf({ ...BLANK_PRESERVE, materialId: two })).toEqual([two]);
    expect(materialsOf(BLANK_NEUTRALISE)).toEqual([]);
    expect(materialsOf({ of: 'form', form: 'fill', values: {}, rows: [] })).toEqual([]);
  });

  it('and every topic is found by the key in its address, with a caution of its own', () => {
    for (const { key, name } of TOPICS) expect(topicOf(key).name).toBe(name);
    expect(new Set(TOPICS.map(({ caution }) => caution)).size).toBe(TOPICS.length);
  });
});
