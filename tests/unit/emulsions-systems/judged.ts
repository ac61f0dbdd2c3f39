import { chargeBearers } from '@core/emulsions/conflicts/charge-bearers';
import { SYSTEM_RULES } from '@core/emulsions/systems/all-rules';
import { memberFacts, offeredBand, type EmulsifierSystem } from '@core/emulsions/systems/system';
import type { RestFacts, Wish } from '@core/emulsions/systems/wish';
import type { Material } from '@core/materials/material';
import { make } from '../checks/build';
import * as shelf from '../checks/materials';

export const priced = (material: Material, perKg: number): Material => ({
  ...material,
  offers: [
    {
      supplier: 'Invented',
      itemCode: '',
      packMg: 1_000_000,
      priceMinor: perKg,
      currency: 'EUR',
      date: '2026-01-01',
    },
  ],
});
export const facts = (material: Material) => memberFacts(material, 'EUR');

export function system(
  members: [Material, number][],
  alcohol: [Material, number] | null = null,
): EmulsifierSystem {
  const emulsifiers = members.map(([material, percent]) => ({ facts: facts(material), percent }));
  return {
    emulsifiers,
    fattyAlcohol: alcohol ? { facts: facts(alcohol[0]), percent: alcohol[1] } : null,
    levelPercent: members.reduce((sum, [, percent]) => sum + percent, 0),
    offered: offeredBand(emulsifiers),
  };
}
export const NO_REST: RestFacts = { bearers: [], hasBase: false, saltPpm: 0 };
export const rest = (...materials: Material[]): RestFacts => ({
  ...NO_REST,
  bearers: chargeBearers(materials.map((material) => ({ lineId: material.id, material, ppm: 10_000 }))),
});
export const wish = (part: Partial<Wish> = {}): Wish => ({
  ...{ emulsionType: 'o/w', feel: 'cream', climate: 'temperate', ph: null, electrolyte: 'none', origins: [] },
  ...{ levelFrom: null, levelTo: null, currency: 'EUR', oils: [], alcoholInOils: 0, oilPercent: 20 },
  ...{ required: { value: null, low: null, high: null, covered: 0, unknown: [] }, targetByHand: false },
  ...{ rest: NO_REST, usualCostPerKg: null, ...part },
});
export const required = (value: number, low = value, high = value): Wish['required'] => ({
  value,
  low,
  high,
  covered: 1,
  unknown: [],
});

export function judged(ruleId: string, of: EmulsifierSystem, part: Partial<Wish> = {}) {
  const rule = SYSTEM_RULES.find((one) => one.id === ruleId);
  if (!rule) throw new Error(ruleId);
  return rule.judge(of, wish(part));
}
export const verdict = (...asked: Parameters<typeof judged>) => judged(...asked).verdict;

export const STEARETH_21 = shelf.steareth21();
export const STEARETH_2 = shelf.steareth2();
export const QUAT = shelf.behentrimonium();
export const GLUTAMATE = shelf.stearoylGlutamate();
export const SOAP = make('Soap', 'Sodium Stearate', { functions: ['emulsifier'], emulsionType: 'o/w' });
export const ACRYLATE = make('Film', 'Acrylates/C10-30 Alkyl Acrylate Crosspolymer', {
  ...{ functions: ['emulsifier'], charge: 'anionic', architecture: 'polymeric', emulsionType: 'o/w' },
});
export const CETEARYL = make('Alcohol C', 'Cetearyl Alcohol', {
  functions: ['co-emulsifier'],
  consistency: 'waxy',
});
export const STEARYL = make('Alcohol S', 'Stearyl Alcohol', {
  functions: ['co-emulsifier'],
  consistency: 'waxy',
});
export const LIQUID_WO = shelf.sorbitanOleate();
export const WAXY_WO = STEARETH_2;
export const POLYMERIC_WO = make('Holdfast', 'PEG-30 Dipolyhydroxystearate', {
  ...{ functions: ['emulsifier'], charge: 'non-ionic', architecture: 'polymeric', emulsionType: 'w/o' },
});
