import { figureValue } from '../materials/figure';
import { organicAcid, type PublishedPka } from '../preservation/organic-acids';
import { asAcid, undissociatedAmount } from '../preservation/undissociated';
import { undissociatedSpread } from '../preservation/undissociated-spread';
import { badInput } from '../working/inputs';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { ACID_MOLAR_MASSES, saltMolarMass } from './acid-molar-masses';
import { entered, givens, type Calculated, type Result } from './calculated';
import type { Library } from './mixes';
import type { PreserveRequest } from './preserve-request';

/** Undissociated share at one pH: by the first pKa, and over all of them. */
export interface PhRow {
  pH: number;
  percent: number;
  low: number;
  high: number;
  /** % of the formula; null without a dose. */
  active: number | null;
}

export interface PreserveCalculated extends Calculated {
  name: string;
  pKas: PublishedPka[];
  rows: PhRow[];
}

const TABLE_PH = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7];
const NOT_PROOF =
  'Not proof of preservation: a challenge test, a qualified safety assessment and local law decide.';

/**
 * How much of an organic acid is undissociated at a pH, and of the dose, with the spread of the published pKas.
 *
 * @throws Problem `invalid-input`
 */
export function calculatePreserve(request: PreserveRequest, library: Library): PreserveCalculated {
  const { name, pKas } = acidOf(request, library);
  const [first] = pKas;
  if (!first) throw badInput('The acid has no pKa.', 'Enter its pKa.', 'pKa');
  const pH = entered(request.pH, 'pH', 'pH');
  const share = shareOf(pKas, pH);
  const dose = doseOf(request);
  const active = dose === null ? null : withSources(undissociatedAmount(dose.value, first.pKa, pH), first);
  return {
    title: 'Organic acid as preservative',
    given: givens([
      ['Acid', name, ''],
      ['pKa', pKas.map((one) => show(one.pKa)).join(', '), ''],
      ['pH of the product', pH, ''],
      ['Dose', request.dosePercent, `% of the formula, as ${request.dosedAs}`],
    ]),
    results: [
      { key: 'share', label: `Undissociated at pH ${show(pH)}`, ...share, digits: 1 },
      ...(active ? [result('active', 'Undissociated in the formula', active, 'of the formula')] : []),
      ...(dose?.worked
        ? [result('dose', 'Dose as acid', dose.worked, 'for limits that are stated “as acid”')]
        : []),
    ],
    withheld: [],
    notes: [NOT_PROOF],
    name,
    pKas,
    rows: TABLE_PH.map((at) => phRow(at, pKas, dose?.value ?? null)),
  };
}

function result(key: string, label: string, worked: Worked, says: string): Result {
  return { key, label, worked, digits: 3, says };
}

function withSources(worked: Worked, first: PublishedPka): Worked {
  return { ...worked, sources: [...worked.sources, first.source] };
}

function shareOf(pKas: readonly PublishedPka[], pH: number): Pick<Result, 'worked' | 'says'> {
  const { worked, low, high } = undissociatedSpread(pKas, pH);
  const says =
    high - low < 0.05
      ? 'of the acid'
      : `of the acid; ${low.toFixed(1)} to ${high.toFixed(1)} over the published pKas`;
  return { worked, says };
}

function acidOf(request: PreserveRequest, library: Library): { name: string; pKas: PublishedPka[] } {
  if (request.materialId !== null) return materialAcid(request.materialId, library);
  const listed = organicAcid(request.acid);
  if (listed) return { name: listed.inci, pKas: [...listed.pKas] };
  const pKa = entered(request.pKa, 'pKa', 'pKa');
  return {
    name: request.acid || 'an acid',
    pKas: [{ pKa, source: { text: 'pKa entered by hand', basis: 'user' } }],
  };
}

function materialAcid(id: string, library: Library): { name: string; pKas: PublishedPka[] } {
  const material = library.get(id);
  if (!material)
    throw badInput(
      'The material is no longer in the library.',
      'Choose another, or an acid from the list.',
      'pKa',
    );
  const figure = material.figures.pKa;
  const value = figureValue(figure);
  if (!figure || value === null)
    throw badInput(
      `${material.tradeName} has no pKa recorded.`,
      'Record it with the material, choose the acid from the list, or enter the pKa.',
      'pKa',
    );
  const text = `${material.tradeName}: ${figure.source || figure.provenance}`;
  const ends = [figure.low, figure.high].filter((end) => end !== null && end !== value);
  return {
    name: material.tradeName,
    pKas: [value, ...ends].map((pKa) => ({ pKa: Number(pKa), source: { text, basis: 'library' as const } })),
  };
}

/** The dose as acid; null until one is entered. */
function doseOf(request: PreserveRequest): { value: number; worked: Worked | null } | null {
  const { dosePercent, dosedAs } = request;
  if (dosePercent === null) return null;
  if (dosedAs === 'acid') return { value: dosePercent, worked: null };
  const known = request.materialId === null ? organicAcid(request.acid) : undefined;
  const listed = known && ACID_MOLAR_MASSES[known.inci];
  const acid = listed ?? entered(request.acidMolarMass, 'Molar mass of the acid', 'acidMolarMass');
  const salt =
    listed !== undefined && dosedAs !== 'other salt'
      ? saltMolarMass(listed, dosedAs)
      : entered(request.saltMolarMass, 'Molar mass of the salt', 'saltMolarMass');
  if (salt < acid)
    throw badInput(
      'The salt is lighter than its acid: a metal is heavier than the hydrogen that it replaces.',
      'Check which molar mass is which.',
      'saltMolarMass',
    );
  const worked = asAcid(dosePercent, salt, acid);
  return { value: worked.value, worked };
}

function phRow(pH: number, pKas: readonly PublishedPka[], dose: number | null): PhRow {
  const { worked, low, high } = undissociatedSpread(pKas, pH);
  const percent = worked.value;
  return { pH, percent, low, high, active: dose === null ? null : (dose * percent) / 100 };
}
