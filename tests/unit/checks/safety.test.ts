import { describe, expect, it } from 'vitest';
import { blankTarget } from '@core/formulas/formula';
import { content, figure, findings, findingsOf, make, nextId, phase, range } from './build';
import { lye, phenoxyethanol, steareth21, water } from './materials';

const NOT_PROOF = 'not proof of preservation';
const atPh = (phLow: number | null, phHigh: number | null) => ({
  target: { ...blankTarget(), phLow, phHigh },
});

describe('preservation', () => {
  it('wants a preservative where there is water, also water inside a blend or a flower water', () => {
    for (const wet of [
      water(),
      lye(),
      make('Label water', 'Aqua/Water/Eau'),
      make('Rose', 'Rosa Damascena Flower Water'),
    ]) {
      const [finding] = findingsOf('no-preservative', [[wet, 5]]);
      expect(finding?.advice).toContain(NOT_PROOF);
    }
    expect(
      findingsOf('no-preservative', [
        [water(), 99],
        [phenoxyethanol(), 1],
      ]),
    ).toEqual([]);
    const dry = ['Cera Alba', 'Nymphaea Alba (Water Lily) Flower Powder'];
    for (const inci of dry) expect(findingsOf('no-preservative', [[make('Balm', inci), 100]])).toEqual([]);
  });
  it('says that a booster alone is no preservative', () => {
    const booster = make('Lift', 'Ethylhexylglycerin', { functions: ['preservative booster'] });
    expect(
      findingsOf('no-preservative', [
        [water(), 99],
        [booster, 1],
      ])[0]?.advice,
    ).toContain('Lift');
  });
  it('warns when the target pH leaves the working range', () => {
    const one = make('Window', 'Dehydroacetic Acid', {
      functions: ['preservative'],
      figures: { workingPh: range(3, 6) },
    });
    expect(findingsOf('preservative-ph', [[one, 1]], atPh(5.5, 6.5))[0]?.advice).toContain(NOT_PROOF);
    expect(findingsOf('preservative-ph', [[one, 1]], atPh(4.5, 5.5))).toEqual([]);
    expect(findingsOf('preservative-ph', [[one, 1]])[0]?.severity).toBe('note');
  });
  it('warns when an organic acid is nearly all dissociated', () => {
    // Steinberg 2005: benzoic acid (pKa 4.18) is 13 % undissociated at pH 5, 1.5 % at pH 6.
    const benzoic = make('Plain B', 'Benzoic Acid', {
      functions: ['preservative'],
      figures: { pKa: figure(4.18) },
    });
    expect(findingsOf('preservative-ph', [[benzoic, 0.5]], atPh(5.5, 6))[0]?.title).toContain('1.5 %');
    expect(findingsOf('preservative-ph', [[benzoic, 0.5]], atPh(4.5, 5))).toEqual([]);
  });
  it('notes water without a chelator', () => {
    expect(findingsOf('chelator', [[water(), 100]])[0]?.severity).toBe('note');
    expect(
      findingsOf('chelator', [
        [water(), 99],
        [make('Bind', 'Sodium Phytate'), 0.1],
      ]),
    ).toEqual([]);
  });
});

describe('legal limits', () => {
  const blend = make('Keepwell Duo', ['Phenoxyethanol', 'Ethylhexylglycerin'], {
    functions: ['preservative'],
  });
  it('sums the substance over all materials that bring it', () => {
    // Regulation (EC) No 1223/2009, Annex V, phenoxyethanol: 1 %. 0.8 % and half of 0.6 % make 1.1 %.
    const [finding] = findingsOf('legal-limit', [
      [phenoxyethanol(), 0.8],
      [blend, 0.6],
    ]);
    expect(finding).toMatchObject({ severity: 'stop' });
    expect(finding?.title).toContain('1.1 %');
    expect(finding?.lines).toHaveLength(2);
    expect(finding?.advice).toContain('not legal advice');
    expect(
      findingsOf('legal-limit', [
        [phenoxyethanol(), 0.8],
        [blend, 0.4],
      ]),
    ).toEqual([]);
  });
  it('warns when only the upper end of a supplier’s range passes the limit', () => {
    const ranged = make('Ranged', 'Phenoxyethanol', {
      composition: [{ inci: 'Phenoxyethanol', lowPpm: 700_000, highPpm: 900_000 }],
    });
    // 0.5 % and 80 % of 0.6 % make 0.98 %; at 90 %, 1.04 %.
    expect(
      findingsOf('legal-limit', [
        [phenoxyethanol(), 0.5],
        [ranged, 0.6],
      ])[0]?.severity,
    ).toBe('warn');
  });
  it('holds a limit on a blend against the blend, unless its note names one substance', () => {
    const limit = { ppm: 10_000, note: '', source: 'Regulation (EC) No 1223/2009' };
    const whole = make('Duo', ['Benzyl Alcohol', 'Dehydroacetic Acid'], { legalLimit: limit });
    expect(findingsOf('legal-limit', [[whole, 1.1]])).toHaveLength(1);
    const named = { ...whole, legalLimit: { ...limit, note: 'as benzyl alcohol' } };
    expect(findingsOf('legal-limit', [[named, 1.1]])).toEqual([]);
    expect(findingsOf('legal-limit', [[named, 2.1]])).toHaveLength(1);
  });
});

describe('heat', () => {
  const tender = make('Tender V', 'Ascorbic Acid', { figures: { maxTemperature: figure(40) } });
  it('warns of a line that is heated beyond what it stands, by its phase or a step that names the phase', () => {
    expect(findings('heat-sensitive', content([phase([[tender, 1]], 75)]), [tender])).toHaveLength(1);
    const cool = phase([[tender, 1]]);
    const step = {
      id: nextId(),
      phaseIds: [cool.id],
      instruction: 'Heat',
      temperatureC: 70,
      speedRpm: null,
      minutes: null,
      lookFor: '',
      caution: '',
    };
    expect(findings('heat-sensitive', content([cool], { steps: [step] }), [tender])).toHaveLength(1);
    expect(findings('heat-sensitive', content([phase([[tender, 1]], 40)]), [tender])).toEqual([]);
  });
  it('warns of a cool-down material in a hot phase', () => {
    const scent = make('Scent', 'Parfum', { phaseOfUse: 'cool-down' });
    expect(findings('heat-sensitive', content([phase([[scent, 1]], 75)]), [scent])).toHaveLength(1);
    expect(findings('heat-sensitive', content([phase([[scent, 1]], 38)]), [scent])).toEqual([]);
  });
  it('warns of a wax in a phase that does not melt it, not of a salt that dissolves', () => {
    const wax = steareth21();
    expect(findings('unmelted', content([phase([[wax, 3]], 40)]), [wax])[0]?.title).toContain('45 °C');
    expect(findings('unmelted', content([phase([[wax, 3]])]), [wax])).toHaveLength(1);
    expect(findings('unmelted', content([phase([[wax, 3]], 75)]), [wax])).toEqual([]);
    const urea = make('Urea', 'Urea', {
      form: 'granules',
      solubleIn: ['water'],
      figures: { meltingPoint: figure(133) },
    });
    expect(findings('unmelted', content([phase([[urea, 3]], 40)]), [urea])).toEqual([]);
  });
});
