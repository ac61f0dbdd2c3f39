import { hlbByAllMethods, NOTHING_KNOWN, type HlbComparison, type HlbInput } from '../emulsions/hlb-methods';
import type { GroupCounts } from '../emulsions/davies';
import { figureValue } from '../materials/figure';
import type { Material } from '../materials/material';
import { CHAINS, HEADS, smilesOfPick } from '../structure/chain-and-head';
import { hlbInputOf } from '../structure/hlb-of-structure';
import { readStructure, type StructureReading } from '../structure/read-structure';
import { badInput } from '../working/inputs';
import { show } from '../working/show';
import { givens, type Calculated, type Given } from './calculated';
import type { HlbRequest } from './hlb-request';
import type { Library } from './mixes';

export interface HlbCalculated extends Calculated {
  /** Null when figures or groups were entered. */
  reading: StructureReading | null;
  comparison: HlbComparison;
}

const NEVER_MIX =
  'Griffin’s and Davies’ figures are two scales. Through one blend keep to one of them; never average the two.';

/**
 * HLB of an emulsifier by every method that applies, from a structure, figures or groups.
 *
 * @param library the material whose recorded HLB is compared, by id
 * @throws Problem `invalid-input` for a structure that cannot be read, or when nothing is entered
 */
export function calculateHlb(request: HlbRequest, library: Library): HlbCalculated {
  const reading = structureOf(request);
  const known = knownOf(request, library);
  const input: HlbInput = reading
    ? { ...hlbInputOf(reading, known), ...(request.corrected ? { groups: request.corrected } : {}) }
    : { ...enteredInput(request), known };
  const comparison = hlbByAllMethods(input);
  const molarMass = reading
    ? [{ key: 'molar-mass', label: 'Molar mass', worked: reading.molarMass, digits: 1, says: '' }]
    : [];
  return {
    title: 'HLB of an emulsifier',
    given: givenOf(request, reading, input),
    results: [
      ...comparison.methods.flatMap((one) =>
        one.applies ? [{ key: one.method, label: one.label, worked: one.worked, digits: 1, says: '' }] : [],
      ),
      ...molarMass,
    ],
    withheld: comparison.methods.flatMap((one) =>
      one.applies ? [] : [{ label: one.label, why: one.reason }],
    ),
    notes: [...comparison.cautions, ...(reading?.cautions ?? []), NEVER_MIX],
    reading,
    comparison,
  };
}

function structureOf(request: HlbRequest): StructureReading | null {
  if (request.way === 'pick') return readStructure(smilesOfPick(request.chain, request.head, request.count));
  if (request.way !== 'smiles') return null;
  if (request.smiles === '')
    throw badInput('There is no SMILES yet.', 'Enter the structure’s SMILES.', 'smiles', { missing: true });
  return readStructure(request.smiles);
}

function enteredInput(request: HlbRequest): HlbInput {
  if (request.way === 'groups') {
    if (countOf(request.groups) === 0)
      throw badInput('No group is counted yet.', 'Give at least one group a count.', 'groups', {
        missing: true,
      });
    return { ...NOTHING_KNOWN, groups: request.groups };
  }
  const { charge, oxyethylenePercent, polyolPercent, saponificationNumber, acidNumber } = request;
  const { hydrophilicMolarMass, molarMass } = request;
  const figures = {
    oxyethylenePercent,
    polyolPercent,
    saponificationNumber,
    acidNumber,
    hydrophilicMolarMass,
    molarMass,
  };
  if (Object.values(figures).every((value) => value === null))
    throw badInput('No figure is entered yet.', 'Enter what the data sheet gives.', '', { missing: true });
  return { ...NOTHING_KNOWN, charge, ...figures };
}

const countOf = (groups: GroupCounts): number => Object.values(groups).reduce((sum, count) => sum + count, 0);

function knownOf(request: HlbRequest, library: Library): HlbInput['known'] {
  const material = request.knownMaterialId === null ? undefined : library.get(request.knownMaterialId);
  const value = figureValue(material?.figures.hlb);
  if (!material || value === null) return null;
  return { value, source: { text: knownWords(material), basis: 'library' } };
}

/** "Trade name: source (supplier), 4 to 9". */
function knownWords({ tradeName, figures }: Material): string {
  const { hlb } = figures;
  const range = hlb && hlb.low !== null && hlb.high !== null ? `, ${show(hlb.low)} to ${show(hlb.high)}` : '';
  return `${tradeName}: ${hlb?.source || 'no source recorded'} (${hlb?.provenance ?? ''})${range}`;
}

function givenOf(request: HlbRequest, reading: StructureReading | null, input: HlbInput): Given[] {
  const head = HEADS[request.head];
  const picked = request.way === 'pick' ? `${CHAINS[request.chain].label}, ${head.label}` : null;
  const units = request.way === 'pick' && head.counts !== null ? request.count : null;
  return givens([
    ['Molecule', picked, ''],
    ['Units', units, head.counts ?? ''],
    ['SMILES', request.way === 'smiles' ? (reading?.smiles ?? null) : null, ''],
    ['Formula', reading?.formula ?? null, ''],
    ['Charge', input.charge, ''],
    ['Oxyethylene', input.oxyethylenePercent, '%'],
    ['Polyol', input.polyolPercent, '%'],
    ['Saponification value', input.saponificationNumber, 'mg KOH/g'],
    ['Acid value of the fatty acid', input.acidNumber, 'mg KOH/g'],
    ['Molar mass of the hydrophilic part', input.hydrophilicMolarMass, 'g/mol'],
    ['Molar mass', input.molarMass, 'g/mol'],
    ['Groups', request.corrected && reading ? 'as corrected by hand' : null, ''],
    ['Recorded HLB', input.known?.value ?? null, input.known ? `(${input.known.source.text})` : ''],
  ]);
}
