import { baseMmol, needyAcidMmol, strongerAcidMmol } from '@core/checks/equivalents';
import type { LineFacts } from '@core/checks/facts';
import { formulaFacts } from '@core/checks/facts';
import { waterOf } from '@core/checks/self-preserving';
import type { Material } from '@core/materials/material';
import { activityOfWater } from '@core/solutions/humectants';
import { describe, expect, it } from 'vitest';
import { content, make, phase } from './build';

/** 1 % of a material as a line. */
function line(material: Material): LineFacts {
  const materials = new Map([[material.id, material]]);
  const formula = content([phase([[material, 1]])]);
  return formulaFacts({ content: formula, materials }).used[0]!;
}

describe('acids and bases that a supplier wrote into one name', () => {
  // 1 g of citric acid, 192.123 g/mol with three groups, is 15.615 mmol; of lactic, 90.078 g/mol, 11.101 mmol.
  it.each([
    ['Citric Acid', 15.615],
    ['Lactic Acid', 11.101],
    ['Citric Acid (anhydrous)', 15.615],
    ['Lactic Acid (and) Aqua', 11.101],
    ['Citric Acid (and) Lactic Acid', 15.615],
    ['Lactic Acid & Citric Acid', 15.615],
    ['Glycerin (and) Aqua', 0],
  ])('%s takes up %d mmol of base at most', (inci, mmol) =>
    expect(strongerAcidMmol(line(make('Acid', inci, { functions: ['acid'] })))).toBeCloseTo(mmol, 3),
  );

  // 1 g of sodium hydroxide, 39.997 g/mol, is 25.002 mmol.
  it.each([
    ['Sodium Hydroxide', 25.002],
    ['Sodium Hydroxide (and) Aqua', 0],
    ['Sodium Hydroxide (and) Potassium Hydroxide', 0],
  ])('%s surely brings %d mmol', (inci, mmol) =>
    expect(baseMmol(line(make('Base', inci, { functions: ['base'] })))).toBeCloseTo(mmol, 3),
  );

  it('a carbomer dispersion may be all carbomer: 62 % of carboxyl, 45.02 g/mol, is 13.77 mmol/g', () => {
    for (const inci of ['Carbomer', 'Carbomer (and) Aqua'])
      expect(needyAcidMmol(line(make('Gel', inci)))).toBeCloseTo(13.772, 2);
  });
});

describe('humectants and water that a supplier wrote into one name', () => {
  const syrup = line(make('Syrup', 'Sorbitol (and) Aqua'));

  it('may be all water, and are no humectant that can be counted on', () => {
    expect(waterOf([syrup])).toBeCloseTo(1, 9);
    expect(activityOfWater([syrup], 1)).toBeNull();
  });
});
