import type { GroupCounts } from '../emulsions/davies';
import type { Charge } from '../materials/vocabulary';
import type { Worked } from '../working/working';
import type { AtomCounts } from './chemical-formula';
import { findGroups } from './find-groups';
import { Graph } from './graph';
import { weighHydrophile } from './hydrophile';
import { molarMassOfCounts } from './molar-mass';
import { parseSmiles } from './parse-smiles';
import type { Structure } from './parse-smiles';

/** All that a structure says of an emulsifier. Masses in g/mol, per cent by mass of the whole substance. */
export interface StructureReading {
  smiles: string;
  /** Hill order: carbon, hydrogen, then by letter. */
  formula: string;
  molarMass: Worked;
  charge: Charge;
  counterIons: string[];
  oxyethyleneUnits: number;
  oxyethylenePercent: number;
  polyolPercent: number;
  /** Oxyethylene and polyol together. */
  hydrophilicMolarMass: number;
  /** Theoretical saponification number of the ester and acid number of its acid, mg KOH/g; null for none. */
  ester: { saponificationNumber: number; acidNumber: number } | null;
  /** Why S and A do not describe it; null where they do, or where it is no ester. */
  notPolyolEster: string | null;
  /** Davies' groups as found; the user may correct them. */
  groups: GroupCounts;
  /** Parts without a group number, with why. */
  withoutNumber: string[];
  cautions: string[];
}

const KOH_MG_PER_MOL = 56_106;

/**
 * Reads a structure: molar mass, formula, charge, hydrophilic part and Davies' groups.
 *
 * @throws Problem `invalid-input` when the SMILES does not parse, is a mixture, or is too large
 * Source: atoms by OpenChemLib; masses by IUPAC weights; group ids of Davies' table.
 */
export function readStructure(smiles: string): StructureReading {
  const structure = parseSmiles(smiles);
  const graph = new Graph(structure.atoms, structure.rings);
  const found = findGroups(graph, structure.counterIons);
  const hydrophile = weighHydrophile(graph, found);
  const molarMass = molarMassOfCounts(structure.counts);
  const whole = molarMass.value;
  const { acids } = hydrophile;
  return {
    smiles: structure.smiles,
    formula: hill(structure.counts),
    molarMass,
    charge: chargeOf(graph),
    counterIons: structure.counterIons.map((ion) => ion.kind),
    oxyethyleneUnits: hydrophile.oxyethyleneUnits,
    oxyethylenePercent: (100 * hydrophile.oxyethyleneMass) / whole,
    polyolPercent: (100 * hydrophile.polyolMass) / whole,
    hydrophilicMolarMass: hydrophile.oxyethyleneMass + hydrophile.polyolMass,
    ester: 'notPolyolEster' in acids ? null : esterNumbers(acids, whole),
    notPolyolEster: 'notPolyolEster' in acids ? acids.notPolyolEster : null,
    groups: found.counts,
    withoutNumber: found.withoutNumber,
    cautions: [...found.cautions, ...wetCaution(structure)],
  };
}

function esterNumbers(acids: { count: number; mass: number }, whole: number): StructureReading['ester'] {
  if (acids.count === 0) return null;
  const groups = KOH_MG_PER_MOL * acids.count;
  return { saponificationNumber: groups / whole, acidNumber: groups / acids.mass };
}

function wetCaution({ waters }: Structure): string[] {
  return waters > 0 ? ['The molar mass includes the crystal water written with the structure.'] : [];
}

/** Charges that a neighbour cancels (nitro, amine oxide) make no ion. */
function chargeOf(graph: Graph): Charge {
  const sites = graph.atoms.filter(
    (atom) => atom.charge !== 0 && !graph.neighbours(atom).some((next) => next.charge * atom.charge < 0),
  );
  const positive = sites.some((atom) => atom.charge > 0);
  const negative = sites.some((atom) => atom.charge < 0);
  if (positive && negative) return 'amphoteric';
  if (positive) return 'cationic';
  return negative ? 'anionic' : 'non-ionic';
}

function hill(counts: AtomCounts): string {
  const hasCarbon = counts.has('C');
  const rank = (element: string): string =>
    hasCarbon && element === 'C' ? '0' : hasCarbon && element === 'H' ? '1' : `2${element}`;
  return [...counts]
    .sort(([a], [b]) => (rank(a) < rank(b) ? -1 : 1))
    .map(([element, count]) => (count === 1 ? element : `${element}${count}`))
    .join('');
}
