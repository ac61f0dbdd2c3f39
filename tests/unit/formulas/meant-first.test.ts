import { meantFirst } from '@renderer/formulas/meant-first';
import type { FoundMaterial } from '@renderer/formulas/suggestions';
import { describe, expect, it } from 'vitest';

function found(
  tradeName: string,
  row: Partial<FoundMaterial['row']> = {},
  near: FoundMaterial['near'] = 'names',
): FoundMaterial {
  const whole = { id: tradeName, tradeName, functions: [], requiredHlbOw: null, phaseOfUse: null, ...row };
  return { kind: 'materials', row: whole as unknown as FoundMaterial['row'], near, putAside: false };
}

const names = (list: readonly FoundMaterial[]): string[] => list.map(({ row }) => row.tradeName);

describe('what a field asks for stands first', () => {
  const water = found('Water');
  const gum = found('Watercress Gum', { functions: ['thickener'] });
  const wax = found('Watermint Wax', { functions: ['emulsifier'] });
  const alcohol = found('Waterleaf Alcohol', {
    functions: ['co-emulsifier', 'emollient'],
    phaseOfUse: 'oil',
  });
  const oil = found('Watermeal Oil', { requiredHlbOw: 7 });

  it('emulsifiers and co-emulsifiers where an emulsifier is added, the others behind them in their order', () => {
    const all = [gum, wax, oil, alcohol];
    expect(names(meantFirst(all, 'emulsifier', 'water'))).toEqual(names([wax, alcohol, gum, oil]));
  });

  it('what has a required HLB or is an emollient of the oil phase where an oil is added, but no emulsifier', () => {
    const humectant = found('Waterbell Glycol', { functions: ['emollient'], phaseOfUse: 'water' });
    const both = found('Watercrown PEG', { functions: ['emulsifier', 'emollient'], phaseOfUse: 'oil' });
    expect(names(meantFirst([gum, humectant, both, wax, oil, alcohol], 'oil', 'water'))).toEqual(
      names([oil, alcohol, gum, humectant, both, wax]),
    );
  });

  it('but one that is called just so, or has that code, before all, whatever it is', () => {
    expect(names(meantFirst([wax, water, gum], 'emulsifier', ' WATER '))).toEqual(names([water, wax, gum]));
    const coded = found('Sorrel Clay', {}, 'code');
    expect(names(meantFirst([wax, coded], 'emulsifier', 'rm007'))).toEqual(names([coded, wax]));
  });

  it('and one that only mentions it in its notes behind all, so that it is not taken for it', () => {
    const mentions = found('Bramble Wax', { functions: ['emulsifier'] }, 'unshown');
    expect(names(meantFirst([gum, mentions], 'emulsifier', 'water'))).toEqual(names([gum, mentions]));
  });
});
