import { formatDate } from '@core/locale/dates';
import { formatMass, formatMassIn, readabilityDigits } from '@core/locale/mass';
import { formatMoney } from '@core/locale/money';
import { regionText, workingNumber, workingText } from '@core/locale/readable';
import { settings } from '@core/settings/settings';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import { workingNodes } from '@core/sheets/working-steps';
import { oneStep } from '@core/working/one-step';
import { formatNumber, formatPercent, formatShare, shareDigits } from '@core/locale/numbers';
import { describe, expect, it } from 'vitest';

describe('writing figures as a region does', () => {
  it('writes per cent with the decimals the share needs', () => {
    expect(formatPercent(125_000, 'en-GB')).toBe('12.50\u00a0%');
    expect(formatPercent(1_234, 'en-GB')).toBe('0.1234\u00a0%');
    expect(formatPercent(125_000, 'de-DE')).toBe('12,50\u00a0%');
    expect(formatPercent(125_000, 'en-GB', 0)).toBe('13\u00a0%');
    expect(formatShare(2_500, 'fr-FR')).toBe('0,25');
  });

  it('finds the decimals a column needs to show every share exactly', () => {
    expect(shareDigits([10_000, 2_500])).toBe(2);
    expect(shareDigits([10_000, 1_250])).toBe(3);
    expect(shareDigits([10_000, 1])).toBe(4);
  });

  it('says a mass in the unit that suits it', () => {
    expect(formatMass(850, 'en-GB')).toBe('850\u00a0mg');
    expect(formatMass(12_500, 'en-GB')).toBe('12.5\u00a0g');
    expect(formatMass(2_500_000, 'de-DE')).toBe('2,5\u00a0kg');
    expect(formatMass(0, 'en-GB')).toBe('0\u00a0g');
  });

  it('shows what the balance can read, no more and no fewer', () => {
    expect(formatMass(12_500, 'en-GB', 100)).toBe('12.5\u00a0g');
    expect(formatMass(12_000, 'en-GB', 100)).toBe('12.0\u00a0g');
    expect(formatMass(2_500_000, 'en-GB', 100)).toBe('2.5000\u00a0kg');
    expect(formatMassIn(2_500_000, 'g', 'en-GB', 10)).toBe('2,500.00');
    expect(readabilityDigits(50, 'g')).toBe(2);
    expect(readabilityDigits(1, 'kg')).toBe(6);
    expect(readabilityDigits(1_000_000, 'kg')).toBe(0);
  });

  it('writes money from minor units, yen without any', () => {
    expect(formatMoney(123_456, 'EUR', 'en-GB')).toBe('€1,234.56');
    expect(formatMoney(1_500, 'JPY', 'en-US')).toBe('¥1,500');
    expect(formatMoney(0.5, 'USD', 'en-US')).toBe('$0.01');
  });

  it('keeps a day the same day wherever the reader is', () => {
    expect(formatDate('2026-03-31', 'en-GB', 'America/Los_Angeles')).toBe('31 Mar 2026');
    expect(formatDate('2026-03-31T23:30:00Z', 'en-GB', 'Europe/Berlin')).toBe('1 Apr 2026');
    expect(() => formatDate('soon', 'en-GB')).toThrow(RangeError);
  });

  it('never writes minus nothing', () => {
    expect(formatNumber(-0, 'en-GB')).toBe('0');
  });

  it('writes a working’s numbers one way, tiny ones included, on screen and on paper', () => {
    expect(workingNumber(5.733e-5, 'en-GB')).toBe('5.733 × 10⁻⁵');
    expect(workingNumber(0.005733, 'de-DE')).toBe('0,005733');
    expect(workingText('10^(3.86 − 2.5) × 0.5 = 4.0875 × 10^−8', 'fr-FR')).toBe(
      '10^(3,86 − 2,5) × 0,5 = 4,0875 × 10⁻⁸',
    );
    const step = { says: 'x', shows: '0.5 × 0.0001146', result: 5.73e-5, unit: 'mol/L' };
    const onPaper = JSON.stringify([
      workingNodes(oneStep(step, []), 'en-GB'),
      calculationSheet(
        {
          title: 'x',
          given: [],
          withheld: [],
          notes: [],
          results: [{ key: 'x', label: 'x', worked: oneStep(step, []), digits: 3, says: '' }],
        },
        settings.parse({}),
        '2026-03-01T10:00:00Z',
      ).content,
    ]);
    expect(onPaper.match(/5\.73 × 10⁻⁵ mol\/L/g)).toHaveLength(3);
  });
});

describe('a sentence with numbers', () => {
  it('has the region’s decimal sign and no break before a unit', () => {
    const said =
      'At 2.5 % it needs 0.125 g of base, 75 °C and pH 5.5 to 6.0; code W-1.2 and section 7.2.1 stay.';
    expect(regionText(said, 'de-DE')).toBe(
      'At 2,5\u00a0% it needs 0,125\u00a0g of base, 75\u00a0°C and pH 5,5 to 6,0; code W-1.2 and section 7.2.1 stay.',
    );
    expect(regionText('5 good reasons, 3 materials, 2.5.', 'de-DE')).toBe(
      '5 good reasons, 3 materials, 2,5.',
    );
  });

  it('has its days as the region writes them, and what only looks like one as it is', () => {
    expect(regionText('Withdrawn from 2026-07-31: recalled.', 'en-GB')).toBe(
      'Withdrawn from 31 Jul 2026: recalled.',
    );
    expect(regionText('Sheet (until 2026-07-31)', 'de-DE')).toBe('Sheet (until 31.07.2026)');
    for (const other of ['2026-02-30', 'lot 2026-07-31-B', 'L2026-07-31', 'CAS 1305-62-0'])
      expect(regionText(other, 'de-DE')).toBe(other);
  });
});
