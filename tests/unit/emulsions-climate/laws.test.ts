import fc from 'fast-check';
import {
  climateOutlook,
  climateSystem,
  type ClimatePart,
  type ClimateSystem,
} from '@core/emulsions/climate/climate';
import type { Material } from '@core/materials/material';
import { CHARGES } from '@core/materials/vocabulary';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import * as shelf from '../checks/materials';

const part: fc.Arbitrary<ClimatePart> = fc.record({
  charge: fc.option(fc.constantFrom(...CHARGES)),
  polymeric: fc.boolean(),
  oxyethylene: fc.boolean(),
});
const outlook = (...materials: Material[]) =>
  climateOutlook(materials.map((material) => ({ lineId: material.id, material, ppm: 20_000 })));

const anionic: ClimatePart = { charge: 'anionic', polymeric: false, oxyethylene: false };
const ethoxylate: ClimatePart = { charge: 'non-ionic', polymeric: false, oxyethylene: true };
const glucoside: ClimatePart = { charge: 'non-ionic', polymeric: false, oxyethylene: false };
const polymer: ClimatePart = { charge: 'anionic', polymeric: true, oxyethylene: false };
const amphoteric: ClimatePart = { charge: 'amphoteric', polymeric: false, oxyethylene: false };

describe('what emulsifiers have in common', () => {
  it.each<[string, ClimatePart[], ClimateSystem]>([
    ['nothing', [], 'none'],
    ['an ionic', [anionic], 'ionic only'],
    ['a cationic', [{ ...anionic, charge: 'cationic' }], 'ionic only'],
    ['an ethoxylate', [ethoxylate], 'non-ionic only'],
    ['a glucoside', [glucoside], 'non-ionic without oxyethylene'],
    ['one chain of two', [glucoside, ethoxylate], 'non-ionic only'],
    ['both signs of help', [anionic, glucoside], 'mixed'],
    ['a polymer', [polymer], 'polymeric or particulate only'],
    ['a polymer beside an ethoxylate', [polymer, ethoxylate], 'non-ionic only'],
    ['a polymer beside an ionic', [polymer, anionic], 'ionic only'],
    ['an amphoteric, which counts for neither side', [amphoteric], 'none'],
    ['an amphoteric beside an ionic', [amphoteric, anionic], 'ionic only'],
    ['an unknown charge', [{ ...anionic, charge: null }], 'none'],
  ])('%s', (_, parts, expected) => {
    expect(climateSystem(parts)).toBe(expected);
  });

  it('does not depend on order or on saying one thing twice', () => {
    fc.assert(
      fc.property(fc.array(part, { maxLength: 6 }), (parts) => {
        const found = climateSystem(parts);
        expect(climateSystem([...parts].reverse())).toBe(found);
        expect(climateSystem([...parts, ...parts])).toBe(found);
      }),
      { numRuns: 80 },
    );
  });

  it('is mixed for good once an ionic and a non-ionic stand together, whatever joins them', () => {
    fc.assert(
      fc.property(fc.array(part, { maxLength: 5 }), (more) => {
        expect(climateSystem([anionic, ethoxylate, ...more])).toBe('mixed');
      }),
      { numRuns: 40 },
    );
  });
});

describe('the outlook of a formula', () => {
  it('adds the test of each weak side: frost for ionics, heat for ethoxylates, both for both (domain: the trade)', () => {
    const stresses = (...materials: Material[]) => outlook(...materials).tests.map((one) => one.stress);
    expect(stresses(shelf.behentrimonium())).toEqual(['freeze–thaw cycles']);
    expect(stresses(shelf.steareth2())).toEqual(['heat']);
    expect(stresses(shelf.steareth2(), shelf.behentrimonium())).toEqual(['freeze–thaw cycles', 'heat']);
    expect(stresses(shelf.sorbitanOleate())).toEqual(['heat']);
    expect(stresses(shelf.mineralOil())).toEqual([]);
  });

  it('does not warn of dehydrated chains where there are none', () => {
    const sugar = make('Sugar wax', ['Cetearyl Alcohol', 'Cetearyl Glucoside'], {
      functions: ['emulsifier'],
      charge: 'non-ionic',
      architecture: 'classic',
    });
    expect(outlook(sugar)).toMatchObject({ system: 'non-ionic without oxyethylene', heat: { risk: 'low' } });
    expect(outlook(sugar).tests[0]?.why).not.toContain('oxyethylene');
    expect(outlook(shelf.steareth21()).tests[0]?.why).toContain('oxyethylene');
  });

  it('takes a classic emulsifier with a little gum or clay in its blend for what is recorded of it', () => {
    for (const helper of ['Xanthan Gum', 'Hectorite', 'Chitosan']) {
      const blend = make('Sugar wax', ['Cetearyl Glucoside', helper], {
        functions: ['emulsifier'],
        charge: 'non-ionic',
        architecture: 'classic',
      });
      const found = outlook(blend, shelf.mineralOil());
      expect(found.system, helper).toBe('non-ionic without oxyethylene');
      expect(found.nonIonic.map((one) => one.name)).toEqual(['Sugar wax']);
    }
    // Recorded as a polymer it stays one, and carbomer is one whatever was recorded.
    const gum = make('Arabic', 'Acacia Senegal Gum', {
      functions: ['emulsifier'],
      charge: 'anionic',
      architecture: 'polymeric',
    });
    expect(outlook(gum).system).toBe('polymeric or particulate only');
    const acrylic = make('Film', 'Acrylates/C10-30 Alkyl Acrylate Crosspolymer', {
      functions: ['emulsifier'],
      charge: 'anionic',
      architecture: 'classic',
    });
    expect(outlook(acrylic).system).toBe('polymeric or particulate only');
  });

  it('counts what emulsifies, not every charge: a thickener or a dye says nothing of frost', () => {
    const found = outlook(shelf.steareth21(), shelf.carbomer(), make('Foam', 'Sodium Laureth Sulfate'));
    expect(found).toMatchObject({ system: 'non-ionic only', ionic: [] });
  });

  it('counts soap also where nobody called it an emulsifier, and no line at nothing', () => {
    expect(outlook(make('Soap', 'Sodium Stearate')).system).toBe('ionic only');
    const none = climateOutlook([{ lineId: 'a', material: shelf.behentrimonium(), ppm: 0 }]);
    expect(none).toMatchObject({ system: 'none', ionic: [], nonIonic: [], tests: [] });
  });

  it('names each emulsifier on its side, once', () => {
    const [quat, wax] = [shelf.behentrimonium(), shelf.steareth21()];
    const found = outlook(quat, wax, shelf.mineralOil());
    expect(found.ionic.map((one) => one.materialId)).toEqual([quat.id]);
    expect(found.nonIonic.map((one) => one.materialId)).toEqual([wax.id]);
  });

  it('says something with a source of frost and of heat for every system', () => {
    for (const materials of [
      [],
      [shelf.steareth2()],
      [shelf.behentrimonium()],
      [shelf.steareth2(), shelf.behentrimonium()],
    ]) {
      const { frost, heat } = outlook(...materials);
      for (const { says, source } of [frost, heat]) {
        expect(says.length).toBeGreaterThan(30);
        expect(source.text.length).toBeGreaterThan(10);
      }
    }
  });
});
