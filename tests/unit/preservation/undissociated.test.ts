import { describe, expect, it } from 'vitest';
import { organicAcid } from '@core/preservation/organic-acids';
import { asAcid, undissociatedAmount, undissociatedPercent } from '@core/preservation/undissociated';
import { undissociatedSpread } from '@core/preservation/undissociated-spread';
import { refusal } from '../working/refusal';

describe('organic-acid preservatives', () => {
  it('benzoic acid at pH 4 runs from about 60 to 61 % over its published pKas (disagreements, 11)', () => {
    const benzoic = organicAcid('benzoic acid');
    expect(benzoic).toBeDefined();
    if (!benzoic) return;
    const { low, high, worked } = undissociatedSpread(benzoic.pKas, 4);
    expect(low).toBeCloseTo(60.2, 1);
    expect(high).toBeCloseTo(61.5, 1);
    expect(worked.sources.map((one) => one.text).join()).toContain('Food Additives Data Book');
  });

  it('says that it is no proof of preservation', () => {
    expect(undissociatedAmount(0.5, 4.19, 5).cautions.join()).toContain('challenge test');
  });

  it('converts a salt to its acid', () => {
    // Sodium benzoate 144.105 and benzoic acid 122.123 g/mol by IUPAC weights.
    expect(asAcid(0.59, 144.105, 122.123).value).toBeCloseTo(0.5, 3);
  });

  it('refuses a pH or a dose that cannot be', () => {
    refusal(() => undissociatedPercent(4.2, 15), /pH is 15/);
    refusal(() => undissociatedAmount(101, 4.2, 4), /Dose/);
    refusal(() => undissociatedPercent(Number.NaN, 4), /pKa is not a number/);
  });
});
