import fc from 'fast-check';
import { preservativeSpectrum } from '@core/checks/preservative-spectrum';
import { preservativeFree } from '@core/checks/preservative-free';
import { formulaFacts } from '@core/checks/facts';
import type { Finding } from '@core/checks/check';
import type { Material } from '@core/materials/material';
import { agentDoses, agentsWithin } from '@core/preservation/agents';
import { describe, expect, it } from 'vitest';
import { content, make, phase } from '../checks/build';

const preservative = (inci: string | string[]): Material =>
  make('Invented Guard', inci, { functions: ['preservative'] });
const AQUA = make('Water', 'Aqua');
const OIL = make('Oil', 'Prunus Amygdalus Dulcis Oil', { functions: ['emollient'], phaseOfUse: 'oil' });

function found(rule: typeof preservativeSpectrum, rows: [Material, number][]): Finding[] {
  const used = rows.reduce((sum, [, percent]) => sum + percent, 0);
  const all: [Material, number][] = [...rows, [AQUA, 100 - used]];
  const materials = new Map(all.map(([material]) => [material.id, material]));
  return rule.judge(formulaFacts({ content: content([phase(all)]), materials }), 0);
}

describe('preservatives that a supplier wrote into one name', () => {
  it('are each known, however they are joined', () => {
    const names = (inci: string): string[] => [...agentsWithin(inci)].map(({ name }) => name).sort();
    for (const between of [' (and) ', ' & ', ' and ', ' (und) '])
      expect(names(['Phenoxyethanol', 'Chlorphenesin', 'Glycerin'].join(between))).toEqual([
        'chlorphenesin',
        'phenoxyethanol',
      ]);
    expect(names('Sodium Benzoate (and) Benzoic Acid')).toEqual(['benzoic acid']);
    expect(names('Glycerin (and) Aqua')).toEqual([]);
  });

  it('may each be none of the line or all of it, as the acid', () => {
    const material = preservative('Phenoxyethanol (and) Sodium Benzoate');
    const doses = agentDoses([{ lineId: 'a', material, ppm: 10_000 }]);
    expect(doses.map(({ agent, ppm }) => [agent.name, ppm])).toEqual([
      ['phenoxyethanol', 0],
      ['benzoic acid', 0],
    ]);
    expect(doses[0]!.unsaidPpm).toBe(10_000);
    // 1 % of sodium benzoate, 144.10 g/mol, is 0.8475 % of benzoic acid, 122.12 g/mol.
    expect(doses[1]!.unsaidPpm).toBeCloseTo(8_474.7, 0);
  });

  it('of one acid, as such and as its salt, are at least what the salt alone would be', () => {
    const material = preservative('Sodium Benzoate (and) Benzoic Acid');
    const [dose] = agentDoses([{ lineId: 'a', material, ppm: 10_000 }]);
    expect([Math.round(dose!.ppm), dose!.unsaidPpm]).toEqual([8_475, 0]);
  });

  it('are in no dose that is told when all stand one by one', () => {
    const share = fc.integer({ min: 0, max: 1_000_000 });
    fc.assert(
      fc.property(share, share, fc.integer({ min: 1, max: 50_000 }), (a, b, ppm) => {
        const composition = [{ inci: 'Phenoxyethanol', lowPpm: Math.min(a, b), highPpm: Math.max(a, b) }];
        const doses = agentDoses([{ lineId: 'a', material: { composition }, ppm }]);
        const least = (ppm * Math.min(a, b)) / 1_000_000;
        expect(doses.map((dose) => [dose.ppm, dose.unsaidPpm])).toEqual(least > 0 ? [[least, 0]] : []);
      }),
    );
  });

  it('leave open what they act against, and the maker is told to ask for the share of each', () => {
    const [told, ...others] = found(preservativeSpectrum, [
      [preservative('Phenoxyethanol (and) Chlorphenesin (and) Aqua'), 1],
    ]);
    expect(others).toEqual([]);
    expect(told).toMatchObject({ severity: 'note' });
    expect(told?.title).toMatch(/Not known whether .*: Invented Guard names several substances in one/);
    expect(told?.advice).toMatch(/Ask the supplier for the share of each/);
  });

  it('are warned of where not even all of the line would act', () => {
    // Iodopropynyl butylcarbamate acts against yeasts and moulds; 0.02 % of phenoxyethanol against nothing.
    const [told] = found(preservativeSpectrum, [
      [preservative('Iodopropynyl Butylcarbamate (and) Phenoxyethanol'), 0.02],
    ]);
    expect(told).toMatchObject({ severity: 'warn' });
    expect(told?.title).toMatch(/against Gram-positive bacteria and Gram-negative bacteria/);
  });

  it('ask nothing where another preservative surely does the work', () => {
    const strong = make('Strong', ['Methylisothiazolinone', 'Aqua'], { functions: ['preservative'] });
    const rows: [Material, number][] = [
      [strong, 0.01],
      [preservative('Phenoxyethanol (and) Ethylhexylglycerin'), 1],
    ];
    expect(found(preservativeSpectrum, rows)).toEqual([]);
  });

  it('are not said to be left in too small an amount, since nobody knows theirs', () => {
    const rows = (inci: string): [Material, number][] => [
      [OIL, 50],
      [preservative(inci), 0.2],
    ];
    expect(found(preservativeFree, rows('Propylparaben'))).toHaveLength(1);
    expect(found(preservativeFree, rows('Propylparaben (and) Phenoxyethanol'))).toEqual([]);
  });
});

describe('a name with more in brackets', () => {
  it.each([
    ['Sodium Benzoate (E 211)', 'benzoic acid'],
    ['Potassium  Sorbate', 'sorbic acid'],
    ['Phenoxyethanol [2-phenoxyethanol]', 'phenoxyethanol'],
  ])('%s is %s', (inci, name) => expect([...agentsWithin(inci)].map((one) => one.name)).toEqual([name]));
});
