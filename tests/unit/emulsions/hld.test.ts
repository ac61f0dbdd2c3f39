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
    const oily = hldNonionic({ ...nonionic, eacn: 40 }, 25).cautions.join();
    expect(oily).toContain('EACN 40 lies outside what has been measured (−5 to 25)');
    // exp(0.16 × 8 + 6.6) is 2643.87 g: printed with six digits, never raw.
    expect(hldZeroSalinity({ ...ionic, cc: -6.6 }, 25).cautions.join()).toContain(
      'Salinity 2643.87 g/100 mL',
    );
    // What the sign means is told beside the figure, not among the cautions.
    expect(hldNonionic({ ...nonionic, cc: -4 }, 25).cautions.join()).not.toContain('favours');
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

  it('promises nothing where the system lies outside what HLD describes', () => {
    const salty = { ...nonionic, salinityPercent: 50, cc: -20 };
    const found = storageWindow({ kind: 'non-ionic', ...salty }, -10, 45);
    expect(found.standing).toBe('not known');
    expect(found.says).not.toContain('no inversion is expected');
    expect(found.says).toMatch(/Salinity 50 g.*freezes/);
    // Frost alone is out of validity too, and what HLD passes within it is still told.
    const frost = storageWindow({ kind: 'non-ionic', ...nonionic }, -10, 60);
    expect(frost.says).toMatch(/^HLD passes zero at .* °C.*freezes/);
  });

  it('warns of an HLD that stays near zero, or comes near it, without a change of sign', () => {
    // 25 °C, b·S = 0, K·EACN = Cc: HLD 0 but for the temperature term.
    const flat = { ...nonionic, salinityPercent: 0, cc: 1.2, cT: 0.001 };
    const stays = storageWindow({ kind: 'non-ionic', ...flat, cc: 1.25 }, 5, 45);
    expect(stays.standing).toBe('near zero');
    expect(stays.says).toContain('stays near zero');
    const comes = storageWindow({ kind: 'non-ionic', ...flat, cT: 0.06, cc: 1.2 }, 26, 45);
    expect(comes.says).toContain('comes near zero at 26 °C');
    expect(hldNonionic(flat, 25).cautions.join()).toContain('the sign of HLD says nothing');
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
