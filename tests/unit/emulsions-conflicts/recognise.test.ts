import * as is from '@core/emulsions/conflicts/recognise';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { CHARGED_NAMES } from './charged-names';
import { OTHER_NAMES } from './other-names';

describe.each(Object.entries({ ...CHARGED_NAMES, ...OTHER_NAMES }))('of %s', (_, { rule, knows, not }) => {
  it.each(knows)('%s is one', (inci) => {
    expect(rule(make('Alone', inci))).toBe(true);
    // However it is written, and inside a blend.
    expect(rule(make('Shouted', `  ${inci.toUpperCase()} `))).toBe(true);
    expect(rule(make('Blend', ['Pentylene Glycol', inci, 'Tocopherol']))).toBe(true);
    // A supplier's own line of two names.
    expect(rule(make('Joined', `${inci} (and) Pentylene Glycol`))).toBe(true);
    expect(rule(make('Joined', `Pentylene Glycol (and) ${inci}`))).toBe(true);
  });

  it.each(not)('%s is none', (inci) => {
    expect(rule(make('Alone', inci))).toBe(false);
  });

  it('nothing is one by nothing', () => {
    expect(rule(make('Empty', ''))).toBe(false);
    expect(rule({ ...make('None', ''), composition: [] })).toBe(false);
  });
});

describe('what is recorded', () => {
  it('makes a base, an electrolyte and a chelator of what no name tells', () => {
    expect(is.isBase(make('Our alkali', 'Mystery', { functions: ['base'] }))).toBe(true);
    expect(is.isElectrolyte(make('Our salts', 'Mystery', { functions: ['electrolyte'] }))).toBe(true);
    expect(is.isChelator(make('Our chelator', 'Mystery', { functions: ['chelator'] }))).toBe(true);
  });

  it('of salt goes before the name: a carbomer recorded as tolerant is so', () => {
    expect(is.isSaltSensitive(make('Gel', 'Carbomer'))).toBe(true);
    expect(is.isSaltSensitive(make('Gel', 'Carbomer', { electrolyteTolerance: 'moderate' }))).toBe(false);
    expect(is.isSaltSensitive(make('Gel', 'Xanthan Gum'))).toBe(false);
    expect(is.isSaltSensitive(make('Gel', 'Xanthan Gum', { electrolyteTolerance: 'low' }))).toBe(true);
  });

  it('tells what needs a base: carbomer by name, a fatty acid only where it is to emulsify', () => {
    expect(is.needsBase(make('Gel', 'Carbomer'))).toBe(true);
    expect(is.needsBase(make('Gel', 'Sodium Carbomer'))).toBe(false);
    expect(is.needsBase(make('Wax', 'Stearic Acid'))).toBe(false);
    expect(is.needsBase(make('Wax', 'Stearic Acid', { functions: ['emulsifier'] }))).toBe(true);
    expect(is.needsBase(make('Other', 'Acrylates Copolymer', { needsNeutralising: true }))).toBe(true);
  });

  it('counts salts of organic acids as salts, and acids as none', () => {
    for (const salt of [
      'Sodium Benzoate',
      'Potassium Sorbate',
      'Tetrasodium EDTA',
      'Sodium Citrate',
      'Sodium Chloride',
    ])
      expect(is.isSalt(salt), salt).toBe(true);
    for (const none of ['Benzoic Acid', 'Sodium Hydroxide', 'Sodium Laureth Sulfate', 'Salicylic Acid'])
      expect(is.isSalt(none), none).toBe(false);
  });
});
