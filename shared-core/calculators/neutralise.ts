import { KNOWN_ACIDS } from '../neutralisation/acids-and-bases';
import { amineUptake, neutralisedFraction } from '../neutralisation/at-ph';
import { neutralise, theoreticalAcidValue, type AcidStrength } from '../neutralisation/neutralise';
import { badInput, between, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';
import { entered, givens, type Calculated, type Result } from './calculated';
import type { NeutraliseRequest } from './neutralise-request';

/**
 * Base for an acid, as % of the formula and, with a batch, as mass to weigh; to a share of its groups, or to a pH.
 *
 * @throws Problem `invalid-input`
 */
export function calculateNeutralise(request: NeutraliseRequest): Calculated {
  const far = howFar(request);
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
    fraction: far.fraction,
    uptake: far.uptake,
    formulaMass: 100,
  });
  const named = request.baseName || 'base';
  const formula: Worked = { ...share, unit: '%', steps: share.steps.map(inPercent) };
  const results: Result[] = [
    { key: 'percent', label: `${named}, as weighed`, worked: formula, digits: 3, says: 'of the formula' },
    ...batchResults(request, formula, named),
    ...far.results,
    ...acidValueResults(request),
  ];
  return { title: 'Neutralising an acid', given: givenOf(request), results, withheld: [], notes: [] };
}

interface HowFar {
  fraction: number;
  uptake: number;
  results: Result[];
}

function howFar(request: NeutraliseRequest): HowFar {
  if (request.neutraliseTo === 'share') {
    const percent = entered(request.neutralisedPercent, 'Share to neutralise', 'Fraction to neutralise');
    return { fraction: percent / 100, uptake: 1, results: [] };
  }
  const pH = entered(request.pH, 'pH to reach', 'pH to reach');
  const share = neutralisedFraction(pKasOf(request), pH);
  const acid: Result = {
    key: 'fraction',
    label: `Acid groups neutralised at pH ${show(pH)}`,
    worked: { ...share, sources: [...share.sources, pKaSource(request)] },
    digits: 3,
    says: 'of all, as a fraction',
  };
  if (request.basePKa === null) return { fraction: share.value, uptake: 1, results: [acid] };
  const taken = amineUptake(request.basePKa, pH);
  const amine: Result = {
    key: 'uptake',
    label: `Amine that takes up acid at pH ${show(pH)}`,
    worked: taken,
    digits: 3,
    says: 'of all, as a fraction',
  };
  return { fraction: share.value, uptake: taken.value, results: [acid, amine] };
}

/** By molar mass the number of groups is known, and each needs its pKa. */
function pKasOf(request: NeutraliseRequest): number[] {
  entered(request.acidPKas[0] ?? null, 'pKa of the acid', 'pKa of the acid');
  const pKas = request.acidPKas.filter((pKa) => pKa !== null);
  const groups = request.acidKnownBy === 'molar mass' ? request.acidEquivalents : null;
  if (groups !== null && groups !== pKas.length)
    throw badInput(
      `The acid has ${show(groups)} acid ${groups === 1 ? 'group' : 'groups'} a molecule, but ${pKas.length} pKa ${pKas.length === 1 ? 'is' : 'are'} given.`,
      'Give one pKa for each acid group, or neutralise to a stated share.',
      'pKa of the acid',
    );
  return pKas;
}

/** The list's own source where its pKas stand unchanged. */
function pKaSource({ acidName, acidPKas }: NeutraliseRequest): Source {
  const listed = KNOWN_ACIDS.find((one) => one.inci === acidName);
  const same = listed && listed.pKas.length === acidPKas.filter((pKa) => pKa !== null).length;
  return same && listed.pKas.every((pKa, index) => pKa === acidPKas[index])
    ? listed.source
    : { text: 'pKa as entered', basis: 'user' };
}

/** What a certificate would show of the pure acid: to hold against the lot's. */
function acidValueResults(request: NeutraliseRequest): Result[] {
  const { acidKnownBy, acidMolarMass, acidEquivalents } = request;
  if (acidKnownBy !== 'molar mass' || acidMolarMass === null || acidEquivalents === null) return [];
  const value = theoreticalAcidValue(acidMolarMass, acidEquivalents);
  return [{ key: 'acid-value', label: 'Acid value of the pure acid', worked: value, digits: 1, says: '' }];
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
    ['Concentration of the base', request.basePercent, '%'],
    ['Share to neutralise', toPh ? null : request.neutralisedPercent, '%'],
    ['pH to reach', toPh ? request.pH : null, ''],
    ['pKa of the acid', toPh ? pKas.map(show).join(', ') : null, ''],
    ['pKa of the base, as its conjugate acid', toPh ? request.basePKa : null, ''],
    ['Batch', request.batchGrams, 'g'],
  ]);
}
