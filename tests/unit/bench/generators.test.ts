import { describe, expect, it } from 'vitest';
import { formulaShares } from '@core/formulas/shares';
import { formula } from '@core/formulas/formula';
import { material } from '@core/materials/material';
import { WHOLE_PPM } from '@core/quantities/share';
import { generateFormulas } from '../../bench/formula-generator';
import { generateMaterials } from '../../bench/library-generator';

describe('the generated library that the bench measures on', () => {
  it('holds materials that pass the same gate as entered ones', () => {
    for (const each of generateMaterials(500)) expect(material.parse(each)).toEqual(each);
  });

  it('holds formulas that pass the gate and come to 100 %', () => {
    for (const each of generateFormulas(200, 500)) {
      expect(formula.parse(each)).toEqual(each);
      expect(formulaShares(each).totalPpm).toBe(WHOLE_PPM);
      expect(Math.min(...formulaShares(each).byLine.values())).toBeGreaterThanOrEqual(0);
    }
  });

  it('is the same for the same seed and another for another', () => {
    expect([...generateMaterials(20, 7)]).toEqual([...generateMaterials(20, 7)]);
    expect([...generateMaterials(20, 7)]).not.toEqual([...generateMaterials(20, 8)]);
  });

  it('has the gaps of a real shelf', () => {
    const all = [...generateMaterials(1000)];
    expect(all.filter((each) => each.form === null).length).toBeGreaterThan(100);
    expect(all.filter((each) => each.offers.length === 0).length).toBeGreaterThan(100);
    expect(all.filter((each) => each.figures.hlb).length).toBeGreaterThan(100);
  });
});
