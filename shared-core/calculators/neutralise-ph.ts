import { KNOWN_ACIDS } from '../neutralisation/acids-and-bases';
import { acidGroups } from '../neutralisation/neutralise';
import { acidAlone, baseToPh } from '../solutions/base-to-ph';
import type { AcidInWater } from '../solutions/base-to-ph';
import type { Solution } from '../solutions/solution';
import { solutionPh } from '../solutions/solution-ph';
import { Problem } from '../problems/problem';
import { badInput, between, positive } from '../working/inputs';
import { show } from '../working/show';
import type { Source, Worked, WorkingStep } from '../working/working';
import { entered, type Calculated, type Result } from './calculated';
import { acidMass, strength } from './neutralise-acid';
import type { NeutraliseRequest } from './neutralise-request';

/** How much base each acid group takes, and what is known of the pH. */
export interface HowFar {
  perGroup: number;
  uptake: number;
  results: Result[];
  /** What of the pH cannot be computed, with why; the base itself can. */
  withheld: Calculated['withheld'];
}

/** @throws Problem `invalid-input` */
export function howFar(request: NeutraliseRequest): HowFar {
  return request.neutraliseTo === 'pH' ? toPh(request) : toShare(request);
}

function toShare(request: NeutraliseRequest): HowFar {
  const percent = entered(request.neutralisedPercent, 'Share to neutralise', 'Share to neutralise');
  const fraction = between(percent, 0, 100, 'Share to neutralise', '%') / 100;
  if (request.acidPKas.every((pKa) => pKa === null)) return { ...BASE_ALONE, perGroup: fraction };
  try {
    return { ...BASE_ALONE, perGroup: fraction, results: phOfShare(request, fraction) };
  } catch (cause) {
    if (!(cause instanceof Problem)) throw cause;
    const why = `${cause.message} ${cause.advice}`;
    return { ...BASE_ALONE, perGroup: fraction, withheld: [{ label: 'pH of the mixture', why }] };
  }
}

const BASE_ALONE = { uptake: 1, results: [], withheld: [] };

function phOfShare(request: NeutraliseRequest, fraction: number): Result[] {
  const { acid, steps } = acidInWater(request);
  const taken = fraction * acid.concentration * acid.pKas.length;
  const mixture = solutionPh(withBase(acidAlone(acid), taken, request.basePKa));
  return [
    {
      key: 'mixture',
      label: 'pH of the neutralised mixture',
      worked: told(mixture.pH, steps, request),
      digits: 2,
      says: 'by the charge balance: a starting point, measure it',
    },
    aloneResult(solutionPh(acidAlone(acid)).pH, steps, request),
    ionicResult(mixture.ionicStrength),
  ];
}

/** An alkali counts by its charge, an amine as a weak base of its own. */
function withBase(solution: Solution, taken: number, basePKa: number | null): Solution {
  if (basePKa === null) return { ...solution, strongCation: taken };
  const amine = { name: 'the amine', pKas: [basePKa], charge: 1, concentration: taken };
  return { ...solution, protolytes: [...solution.protolytes, amine] };
}

function toPh(request: NeutraliseRequest): HowFar {
  const pH = entered(request.pH, 'pH to reach', 'pH to reach');
  const { acid, steps } = acidInWater(request);
  const found = baseToPh(acid, pH, request.basePKa);
  const results: Result[] = [
    {
      key: 'fraction',
      label: `Base for each acid group at pH ${show(pH)}`,
      worked: told(found.perGroup, steps, request),
      digits: 3,
      says: found.perGroup.value > 1 ? 'more than one: part of it is free alkali' : 'of all, as a fraction',
    },
    aloneResult(found.alone, steps, request),
    ionicResult(found.ionicStrength),
  ];
  if (!found.uptake) return { ...BASE_ALONE, perGroup: found.perGroup.value, results };
  const amine: Result = {
    key: 'uptake',
    label: `Amine that takes up acid at pH ${show(pH)}`,
    worked: found.uptake,
    digits: 3,
    says: 'of all, as a fraction',
  };
  const uptake = found.uptake.value;
  return { ...BASE_ALONE, perGroup: found.perGroup.value, uptake, results: [amine, ...results] };
}

function aloneResult(alone: Worked, steps: readonly WorkingStep[], request: NeutraliseRequest): Result {
  return {
    key: 'alone',
    label: 'pH of the acid alone',
    worked: told(alone, steps, request),
    digits: 2,
    says: 'in the same water, before any base',
  };
}

function ionicResult(worked: Worked): Result {
  return { key: 'ionic', label: 'Ionic strength', worked, digits: 3, says: 'of the neutralised mixture' };
}

/** The steps to the acid's concentration stand before, the pKa's source behind. */
function told(from: Worked, before: readonly WorkingStep[], request: NeutraliseRequest): Worked {
  return { ...from, steps: [...before, ...from.steps], sources: [...from.sources, pKaSource(request)] };
}

function acidInWater(request: NeutraliseRequest): { acid: AcidInWater; steps: WorkingStep[] } {
  const pKas = pKasOf(request);
  const water = positive(
    between(entered(request.waterPercent, 'Water', 'Water'), 0, 100, 'Water', '%'),
    'Water',
  );
  const groups = acidGroups(acidMass(request), strength(request));
  const result = (10 * groups.result) / pKas.length / (water / 100);
  return {
    acid: { pKas, concentration: result },
    steps: [
      { ...groups, unit: 'mol per 100 g of formula' },
      {
        says: 'acid in its water: 10 × acid groups / groups per molecule / share of water, 1 kg of water taken as 1 L',
        shows: `10 × ${show(groups.result)} / ${pKas.length} / ${show(water / 100)}`,
        result,
        unit: 'mol/L',
      },
    ],
  };
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
