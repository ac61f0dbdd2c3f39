import { acidHandling, baseHandling } from '../neutralisation/handling';
import { baseToWeigh, theoreticalAcidValue, type BaseSolution } from '../neutralisation/neutralise';
import { usualShare } from '../neutralisation/usual-shares';
import { positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import { COMMON_PRACTICE, type Worked, type WorkingStep } from '../working/working';
import { entered, givens, type Calculated, type Result } from './calculated';
import { acidMass, strength } from './neutralise-acid';
import { howFar } from './neutralise-ph';
import type { NeutraliseRequest } from './neutralise-request';

/**
 * Base for an acid, as % of the formula and, with a batch, as mass to weigh; to a share of its groups, or to a pH.
 *
 * @throws Problem `invalid-input`
 */
export function calculateNeutralise(request: NeutraliseRequest): Calculated {
  // In the order of the screen, so that the first field that is empty is asked for.
  const acid = { acidMass: acidMass(request), acid: strength(request) };
  const base = baseOf(request);
  const far = howFar(request);
  const wish = {
    ...acid,
    fraction: far.perGroup,
    uptake: far.uptake,
    formulaMass: 100,
  };
  const { worked: share } = baseToWeigh({ ...wish, base });
  const named = request.baseName || 'base';
  const formula = withUsualShare({ ...share, unit: '%', steps: share.steps.map(inPercent) }, request);
  const at = (percent: number): number =>
    baseToWeigh({ ...wish, base: { ...base, concentrationPercent: percent } }).solutionMass;
  const results: Result[] = [
    {
      key: 'percent',
      label: `${named}, as weighed`,
      worked: formula,
      digits: 3,
      says: `of the formula${overStrengths(request, at)}`,
    },
    ...batchResults(request, formula, named),
    ...far.results,
    ...acidValueResults(request),
  ];
  return {
    title: 'Neutralising an acid',
    given: givenOf(request),
    results,
    withheld: far.withheld,
    notes: [],
  };
}

/** The substance says how it is handled, not the maker. */
function baseOf(request: NeutraliseRequest): BaseSolution {
  const acid = acidHandling({
    names: [request.acidName, request.acidInci],
    hazards: request.acidHazards,
  });
  const base = baseHandling(
    { names: [request.baseName, request.baseInci], hazards: request.baseHazards },
    request.basePKa,
  );
  return {
    molarMass: entered(request.baseMolarMass, 'Molar mass of the base', 'Molar mass of the base'),
    equivalents: entered(request.baseEquivalents, 'Equivalents of the base', 'Equivalents of the base'),
    concentrationPercent: entered(request.basePercent, 'Strength of the base', 'Strength of the base'),
    handling: acid ? [base, acid] : [base],
  };
}

/** A supplier's range of strength, carried into the base to weigh. */
function overStrengths(request: NeutraliseRequest, at: (percent: number) => number): string {
  const { basePercentLow: low, basePercentHigh: high, basePercent } = request;
  if (low === null || high === null || !(low > 0) || !(low < high)) return '';
  if (basePercent === null || basePercent < low || basePercent > high) return '';
  return `; ${at(high).toFixed(3)} to ${at(low).toFixed(3)} % over its strengths of ${show(high)} to ${show(low)} %`;
}

function withUsualShare(formula: Worked, request: NeutraliseRequest): Worked {
  if (request.usualShare === null || request.neutraliseTo !== 'share') return formula;
  const { label, low, high } = usualShare(request.usualShare);
  const percent = request.neutralisedPercent ?? 0;
  const range = `${label}: ${low} to ${high} % of the acid is usual`;
  const beyond = percent < low || percent > high;
  return {
    ...formula,
    sources: [...formula.sources, { ...COMMON_PRACTICE, text: `${range} (${COMMON_PRACTICE.text})` }],
    cautions: beyond
      ? [...formula.cautions, `${range}; ${show(percent)} % lies outside.`]
      : [...formula.cautions, 'The share is a starting point: find yours by trials.'],
  };
}

/** What a certificate would show of the pure acid: to hold against the lot's. */
function acidValueResults(request: NeutraliseRequest): Result[] {
  const { acidKnownBy, acidMolarMass, acidEquivalents } = request;
  if (acidKnownBy !== 'molar mass' || acidMolarMass === null || acidEquivalents === null) return [];
  const value = theoreticalAcidValue(acidMolarMass, acidEquivalents);
  return [{ key: 'acid-value', label: 'Acid value of the pure acid', worked: value, digits: 1, says: '' }];
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
  const toPh = request.neutraliseTo === 'pH';
  const pKas = request.acidPKas.filter((pKa) => pKa !== null);
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
    ['Strength of the base', request.basePercent, '%'],
    ['Strength of the base, lowest', request.basePercentLow, '%'],
    ['Strength of the base, highest', request.basePercentHigh, '%'],
    ['Share to neutralise', toPh ? null : request.neutralisedPercent, '%'],
    ['pH to reach', toPh ? request.pH : null, ''],
    ['pKa of the acid', pKas.map(show).join(', '), ''],
    ['pKa of the base, as its conjugate acid', pKas.length > 0 ? request.basePKa : null, ''],
    ['Water that holds them', pKas.length > 0 ? request.waterPercent : null, '% of the formula'],
    ['Batch', request.batchGrams, 'g'],
  ]);
}
