import { neutralise, type AcidStrength } from '../neutralisation/neutralise';
import { between, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { entered, givens, type Calculated, type Result } from './calculated';
import type { NeutraliseRequest } from './neutralise-request';

/** Base for an acid, as % of the formula and, with a batch, as mass to weigh. @throws Problem `invalid-input` */
export function calculateNeutralise(request: NeutraliseRequest): Calculated {
  const { worked: share } = neutralise({
    acidMass: acidMass(request),
    acid: strength(request),
    base: {
      molarMass: entered(request.baseMolarMass, 'Molar mass of the base', 'Molar mass of the base'),
      equivalents: entered(request.baseEquivalents, 'Equivalents of the base', 'Equivalents of the base'),
      concentrationPercent: entered(
        request.basePercent,
        'Concentration of the base',
        'Concentration of the base',
      ),
      caustic: request.caustic,
    },
    fraction: entered(request.neutralisedPercent, 'Share to neutralise', 'Fraction to neutralise') / 100,
    formulaMass: 100,
  });
  const named = request.baseName || 'base';
  const formula: Worked = { ...share, unit: '%', steps: share.steps.map(inPercent) };
  const results: Result[] = [
    { key: 'percent', label: `${named}, as weighed`, worked: formula, digits: 3, says: 'of the formula' },
    ...batchResults(request, formula, named),
  ];
  return { title: 'Neutralising an acid', given: givenOf(request), results, withheld: [], notes: [] };
}

/** Mass of acid in 100 parts of formula; an acid value already tells of the material as weighed. */
function acidMass(request: NeutraliseRequest): number {
  const percent = between(
    entered(request.acidPercent, 'Level of the acid', 'Level of the acid'),
    0,
    100,
    'Level of the acid',
    '%',
  );
  if (request.acidKnownBy === 'acid value') return percent;
  const active = entered(request.acidActivePercent, 'Acid in what is weighed', 'Acid in what is weighed');
  return (percent * between(active, 0, 100, 'Acid in what is weighed', '%')) / 100;
}

function strength(request: NeutraliseRequest): AcidStrength {
  if (request.acidKnownBy === 'acid value')
    return { acidValue: entered(request.acidValue, 'Acid value', 'Acid value') };
  return {
    molarMass: entered(request.acidMolarMass, 'Molar mass of the acid', 'Molar mass of the acid'),
    equivalents: entered(request.acidEquivalents, 'Acid groups per molecule', 'Acid groups per molecule'),
  };
}

/** The masses are per 100 g of formula, so they read as per cent. */
function inPercent(step: WorkingStep, index: number): WorkingStep {
  return { ...step, unit: index === 0 ? 'mol per 100 g of formula' : '% of the formula' };
}

function batchResults(request: NeutraliseRequest, formula: Worked, named: string): Result[] {
  if (request.batchGrams === null) return [];
  const grams = positive(request.batchGrams, 'Batch');
  const step = {
    says: 'mass to weigh: % of the formula × batch / 100',
    shows: `${show(formula.value)} × ${show(grams)} / 100`,
    result: (formula.value * grams) / 100,
    unit: 'g',
  };
  const mass = worked([step], [], []);
  return [
    { key: 'mass', label: `${named} for the batch`, worked: mass, digits: { min: 0, max: 3 }, says: '' },
  ];
}

function givenOf(request: NeutraliseRequest) {
  const byValue = request.acidKnownBy === 'acid value';
  return givens([
    ['Acid', request.acidName, ''],
    ['Level of the acid', request.acidPercent, '% of the formula'],
    ['Acid value', byValue ? request.acidValue : null, 'mg KOH/g'],
    ['Acid in what is weighed', byValue ? null : request.acidActivePercent, '%'],
    ['Molar mass of the acid', byValue ? null : request.acidMolarMass, 'g/mol'],
    ['Acid groups per molecule', byValue ? null : request.acidEquivalents, ''],
    ['Base', request.baseName, ''],
    ['Molar mass of the base', request.baseMolarMass, 'g/mol'],
    ['Equivalents of the base', request.baseEquivalents, 'per molecule'],
    ['Concentration of the base', request.basePercent, '%'],
    ['Share to neutralise', request.neutralisedPercent, '%'],
    ['Batch', request.batchGrams, 'g'],
  ]);
}
