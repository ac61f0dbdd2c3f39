import { describe, expect, it } from 'vitest';
import { climateOutlook } from '@core/emulsions/climate/climate';
import type { Material } from '@core/materials/material';
import { make } from '../checks/build';
import * as shelf from '../checks/materials';

const outlook = (...materials: Material[]) =>
  climateOutlook(materials.map((material, index) => ({ lineId: `${index}`, material, ppm: 20_000 })));

describe('climate', () => {
  it('expects frost to harm ionics, and adds freeze–thaw cycles', () => {
    const found = outlook(shelf.stearoylGlutamate(), shelf.mineralOil());
    expect(found).toMatchObject({ system: 'ionic only', frost: { risk: 'likely' }, heat: { risk: 'low' } });
    expect(found.tests.map((test) => test.stress)).toEqual(['freeze–thaw cycles']);
  });
  it('expects heat to harm non-ionics, and adds heat', () => {
    const found = outlook(shelf.steareth21(), shelf.steareth2());
    expect(found).toMatchObject({ system: 'non-ionic only', heat: { risk: 'possible' } });
    expect(found.tests.map((test) => test.stress)).toEqual(['heat']);
  });
  it('tests a mixed system both ways', () => {
    expect(outlook(shelf.steareth21(), shelf.stearoylGlutamate()).tests).toHaveLength(2);
  });
  it('counts soap made in the pot as ionic, the bare acid not', () => {
    expect(outlook(shelf.stearicAcid(), shelf.lye()).system).toBe('ionic only');
    expect(outlook(shelf.stearicAcid()).system).toBe('none');
  });
  it('does not guess from the charge of a polymer, and asks nothing without emulsifiers', () => {
    const polymer = make('Film', 'Acrylates/C10-30 Alkyl Acrylate Crosspolymer', {
      functions: ['emulsifier'],
      architecture: 'polymeric',
      charge: 'anionic',
    });
    expect(outlook(polymer)).toMatchObject({
      system: 'polymeric or particulate only',
      frost: { risk: 'unknown' },
    });
    expect(outlook(shelf.water())).toMatchObject({ system: 'none', tests: [] });
  });
});
