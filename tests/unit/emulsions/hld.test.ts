import { describe, expect, it } from 'vitest';
import { ccMix, moleFractions } from '@core/emulsions/cc';
import { eacnMix } from '@core/emulsions/eacn';
import { hldIonic, hldMeaning, hldNonionic } from '@core/emulsions/hld';
import { hldZeroSalinity, hldZeroTemperature, storageWindow } from '@core/emulsions/hld-zero';
import { refusal } from '../working/refusal';

// Constants as published for ethoxylates (Bourrel 1980) and sulfonates (Salager 1979), from memory.
const nonionic = { salinityPercent: 1, eacn: 8, cc: 0, alcoholTerm: 0, b: 0.13, k: 0.15, cT: 0.06 };
const ionic = { salinityPercent: 2, eacn: 8, cc: -0.9, alcoholTerm: 0, k: 0.16, alphaT: 0.01 };

describe('HLD', () => {
  it('warming drives an ethoxylate to w/o and an ionic to o/w', () => {
    expect(hldNonionic(nonionic, 60).value).toBeGreaterThan(hldNonionic(nonionic, 25).value);
    expect(hldIonic(ionic, 60).value).toBeLessThan(hldIonic(ionic, 25).value);
    expect(hldMeaning(-1)).toContain('o/w');
    expect(hldMeaning(1)).toContain('w/o');
  });

  it('refuses an ionic without salt, K of zero and what is no number', () => {
    refusal(() => hldIonic({ ...ionic, salinityPercent: 0 }, 25), /Salinity is 0/);
    refusal(() => hldIonic({ ...ionic, k: 0 }, 25), /K is 0/);
    refusal(() => hldNonionic({ ...nonionic, cc: Number.NaN }, 25), /Cc is not a number/);
    refusal(() => hldNonionic(nonionic, -300), /Temperature/);
  });

  it('says when a result lies outside what was measured', () => {
    expect(hldNonionic({ ...nonionic, salinityPercent: 40 }, 25).cautions.join()).toContain(
      'more salt than water',
    );
    expect(hldNonionic(nonionic, 120).cautions.join()).toContain('0 to 100 °C');
    expect(hldNonionic({ ...nonionic, eacn: 40 }, 25).cautions.join()).toContain('EACN 40');
  });

  it('has no inversion temperature without a temperature term, and none below absolute zero', () => {
    refusal(() => hldZeroTemperature({ ...nonionic, cT: 0 }), /does not change with temperature/);
    refusal(() => hldZeroTemperature({ ...nonionic, cc: 20, cT: 0.01 }), /below absolute zero/);
  });

  it('refuses a salinity beyond computing', () => {
    refusal(() => hldZeroSalinity({ ...ionic, cc: -5000 }, 25), /beyond what can be computed/);
  });
});

describe('storage', () => {
  it('says where an emulsion passes inversion, and that another does not', () => {
    const inversion = hldZeroTemperature(nonionic).value;
    const found = storageWindow({ kind: 'non-ionic', ...nonionic }, 5, 60);
    expect(found.inversionTemperature).toBeCloseTo(inversion, 9);
    expect(found.says).toContain('passes zero');
    expect(storageWindow({ kind: 'non-ionic', ...nonionic, cc: -9 }, 5, 45).says).toContain('keeps its sign');
    refusal(() => storageWindow({ kind: 'ionic', ...ionic }, 40, 5), /above the hottest/);
  });
});

describe('mixes', () => {
  it('refuse fractions that do not sum to 1, and per cent', () => {
    refusal(() => eacnMix([{ fraction: 0.5, eacn: 8 }]), /sum to 0\.5/);
    refusal(() => eacnMix([{ fraction: 50, eacn: 8 }]), /between 0 and 1/);
    refusal(() => ccMix([]), /no surfactant/);
  });

  it('take printed fractions that miss 1 by rounding', () => {
    const third = { fraction: 0.333, eacn: 9 };
    expect(eacnMix([third, third, third]).value).toBeCloseTo(9, 12);
  });

  it('mole fractions follow mass over molar mass', () => {
    expect(
      moleFractions([
        { mass: 1, molarMass: 100 },
        { mass: 3, molarMass: 300 },
      ]),
    ).toEqual([0.5, 0.5]);
  });
});
