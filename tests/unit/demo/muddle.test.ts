import { checkFormula } from '@core/checks/all';
import { MUDDLE_CODE } from '@core/demo/formulas/muddle';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../limits/law';
import { formulaByCode, library } from './demo-shelf';

describe('the formula that is wrong on purpose', () => {
  const content = formulaByCode(MUDDLE_CODE);
  const materials = new Map(library.materials.map((one) => [one.id, one]));
  const found = checkFormula({ content, materials, law: EXAMPLES, onDay: '2026-11-28' });

  it('shows at least twenty kinds of findings, each of another check', () => {
    expect(new Set(found.map(({ ruleId }) => ruleId)).size).toBeGreaterThanOrEqual(20);
    expect(new Set(found.map(({ title }) => title)).size).toBe(found.length);
  });

  it('says of itself that it is not to be made', () => {
    expect(content.purpose).toContain('Wrong on purpose');
    expect(content.notes).toContain('nobody should make it');
  });
});
