import { SETTINGS } from '@core/settings/noun';
import { settings } from '@core/settings/settings';
import { describe, expect, it } from 'vitest';

describe('the ends of what can be set', () => {
  it.each([
    [{ readabilityMg: 1 }, { readabilityMg: 1_000_000 }],
    [{ overagePpm: 0 }, { overagePpm: 500_000 }],
    [{ formulaPrefix: '' }, { formulaPrefix: 'x'.repeat(12) }],
    [{ makerName: '' }, { makerName: 'x'.repeat(200) }],
    [{ checkThresholds: { nano: 0 } }, { checkThresholds: { nano: 1_000_000 } }],
  ])('%j and %j are taken as they are', (...both) => {
    for (const part of both) expect(settings.parse(part)).toMatchObject(part);
  });

  it('an address keeps its lines, a name has one', () => {
    expect(settings.parse({ makerAddress: '4 Weir Lane\nHatherby' }).makerAddress).toContain('\n');
    expect(settings.safeParse({ makerName: 'Two\nlines' }).error?.issues[0]?.message).toBe(
      'This stays on one line.',
    );
  });

  it('what an older library did not know yet is as usual, and its history names each by its own words', () => {
    const { backupTriedOn, tableWords } = SETTINGS.read({ currency: 'CHF' });
    expect([backupTriedOn, tableWords]).toEqual(['', {}]);
    expect(SETTINGS.titleOf(settings.parse({}))).toBe('Settings');
    expect(SETTINGS.fields.readabilityMg?.label).toBe('Balance readability');
  });
});
