import { describe, expect, it } from 'vitest';
import { chargeConflicts } from '@core/emulsions/conflicts/charge-conflicts';
import type { Material } from '@core/materials/material';
import { make } from '../checks/build';
import * as shelf from '../checks/materials';

function conflicts(...materials: Material[]) {
  return chargeConflicts(
    materials.map((material, index) => ({ lineId: `line ${index}`, material, ppm: 10_000 })),
  );
}
const severities = (...materials: Material[]) => conflicts(...materials).map((one) => one.severity);

describe('charge conflicts', () => {
  it('call a cationic with soap, surfactant or carbomer a salt', () => {
    const soap = make('Soap', 'Sodium Stearate');
    const sls = make('Foam', 'Sodium Laureth Sulfate');
    for (const anionic of [soap, sls, shelf.carbomer(), shelf.stearoylGlutamate()]) {
      expect(severities(shelf.behentrimonium(), anionic)).toEqual(['forms a salt']);
    }
  });
  it.each([
    'Ceteth-10 Phosphate',
    'Lauroyl Sarcosine',
    'Sodium Lauroyl Oat Amino Acids',
    'Sodium Stearyl Sulfate',
    'Laureth-11 Carboxylic Acid',
    'Disodium Coco-Glucoside Citrate',
    'Cetearyl Alcohol (and) Dicetyl Phosphate (and) Ceteth-10 Phosphate',
  ])('call a cationic with %s a salt, though its charge is not recorded', (inci) => {
    expect(severities(shelf.behentrimonium(), make('Nameless', inci))).toEqual(['forms a salt']);
  });
  it('take a quaternised protein for a polymer: it may lose effect, and forms no insoluble salt', () => {
    const protein = make('Silk Q', 'Cocodimonium Hydroxypropyl Hydrolyzed Wheat Protein');
    expect(severities(protein, make('Foam', 'Sodium Laureth Sulfate'))).toEqual(['may lose effect']);
    expect(severities(protein, shelf.behentrimonium())).toEqual([]);
  });
  it('count soap formed by an acid with a base, and only watch the acid alone', () => {
    expect(severities(shelf.behentrimonium(), shelf.stearicAcid())).toEqual(['watch']);
    expect(severities(shelf.behentrimonium(), shelf.stearicAcid(), shelf.lye())).toEqual(['forms a salt']);
    expect(conflicts(shelf.behentrimonium(), shelf.stearicAcid(), shelf.lye())[0]?.second.kind).toBe('soap');
  });
  it('see the soap inside a self-emulsifying blend, whatever charge is recorded', () => {
    const se = make('SE Wax', ['Glyceryl Stearate', 'Potassium Stearate'], { charge: 'non-ionic' });
    expect(severities(shelf.behentrimonium(), se)).toEqual(['forms a salt']);
  });
  it('say that gums, dyes and cationic polymers may lose effect', () => {
    expect(severities(shelf.behentrimonium(), make('Gum', 'Xanthan Gum'))).toEqual(['may lose effect']);
    const dye = make('Blue', 'CI 42090', { functions: ['colorant'], solubleIn: ['water'] });
    expect(severities(shelf.behentrimonium(), dye)).toEqual(['may lose effect']);
    expect(severities(make('Poly', 'Polyquaternium-10'), shelf.stearoylGlutamate())).toEqual([
      'may lose effect',
    ]);
  });
  it('know metal soaps and the thinning of carbomer by multivalent ions', () => {
    const magnesium = make('Bitter', 'Magnesium Sulfate');
    expect(severities(magnesium, make('Soap', 'Sodium Oleate'))).toEqual(['forms a salt']);
    expect(severities(magnesium, shelf.carbomer())).toEqual(['may lose effect']);
    expect(severities(magnesium, shelf.steareth21())).toEqual([]);
  });
  it('only watch an amphoteric beside a cationic, and a cationic polymer beside a gel network', () => {
    const lecithin = make('Leci', 'Lecithin', { charge: 'amphoteric', functions: ['emulsifier'] });
    expect(severities(lecithin, shelf.behentrimonium())).toEqual(['watch']);
    expect(severities(make('Poly', 'Polyquaternium-7'), shelf.steareth21())).toEqual(['watch']);
  });
  it('find nothing among one sign and non-ionics, nor on a line at zero', () => {
    expect(severities(shelf.behentrimonium(), shelf.steareth21(), shelf.water(), shelf.mineralOil())).toEqual(
      [],
    );
    expect(
      severities(shelf.stearoylGlutamate(), shelf.carbomer(), shelf.lye(), shelf.saltCrystals()),
    ).toEqual([]);
    const doses = [shelf.behentrimonium(), shelf.carbomer()].map((material, index) => ({
      lineId: `${index}`,
      material,
      ppm: index === 1 ? 0 : 10_000,
    }));
    expect(chargeConflicts(doses)).toEqual([]);
  });
  it('name each pair once, the worst first', () => {
    const found = conflicts(make('Gum', 'Xanthan Gum'), shelf.behentrimonium(), shelf.stearoylGlutamate());
    expect(found.map((one) => one.severity)).toEqual(['forms a salt', 'may lose effect']);
  });
});
