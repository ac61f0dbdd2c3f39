import { Molecule } from 'openchemlib';

export interface DrawnLine {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
}
export interface DrawnLabel {
  x: number;
  y: number;
  /** The element with its hydrogens and charge, such as "OH" or "Na⁺". */
  text: string;
}
/** A structure on a plane, from the upper left. */
export interface DrawnStructure {
  width: number;
  height: number;
  lines: DrawnLine[];
  labels: DrawnLabel[];
}

const BOND = 22;
const MARGIN = 16;
/** How far a bond stays away from a letter, and the lines of a double bond from its middle. */
const CLEAR = 8;
const APART = 2.2;

interface Place {
  x: number;
  y: number;
}

const raised = (digits: number): string => [...String(digits)].map((d) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(d)]).join('');
const lowered = (digits: number): string => [...String(digits)].map((d) => '₀₁₂₃₄₅₆₇₈₉'[Number(d)]).join('');

/** What stands at an atom: nothing at a carbon within a chain, as skeletons are drawn. */
function labelOf(molecule: Molecule, atom: number): string {
  const element = molecule.getAtomLabel(atom);
  const charge = molecule.getAtomCharge(atom);
  if (element === 'C' && charge === 0 && molecule.getConnAtoms(atom) > 0) return '';
  const hydrogens = molecule.getImplicitHydrogens(atom);
  const bears = hydrogens === 0 ? '' : hydrogens === 1 ? 'H' : `H${lowered(hydrogens)}`;
  const size = Math.abs(charge);
  const sign = charge === 0 ? '' : `${size > 1 ? raised(size) : ''}${charge > 0 ? '⁺' : '⁻'}`;
  return `${element}${bears}${sign}`;
}

/** The lines of one bond, shortened where a letter stands, side by side for each order. */
function bondLines(from: Place, to: Place, order: number, clear: [boolean, boolean]): DrawnLine[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const [near, far] = clear.map((kept) => (kept ? CLEAR : 0)) as [number, number];
  return Array.from({ length: order }, (_, line) => {
    const aside = (line - (order - 1) / 2) * 2 * APART;
    return {
      x1: from.x + along.x * near - along.y * aside,
      y1: from.y + along.y * near + along.x * aside,
      x2: to.x - along.x * far - along.y * aside,
      y2: to.y - along.y * far + along.x * aside,
    };
  });
}

/**
 * The skeleton of a structure, as chemists draw it.
 * @param smiles one that `readStructure` has read
 */
export function drawStructure(smiles: string): DrawnStructure {
  const molecule = Molecule.fromSmiles(smiles);
  molecule.ensureHelperArrays(Molecule.cHelperRings);
  const atoms = Array.from({ length: molecule.getAtoms() }, (_, atom) => atom);
  const xs = atoms.map((atom) => molecule.getAtomX(atom));
  const ys = atoms.map((atom) => molecule.getAtomY(atom));
  const scale = BOND / (molecule.getBonds() > 0 ? molecule.getAverageBondLength(true) : 1);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const places = atoms.map((atom): Place => ({
    x: MARGIN + ((xs[atom] ?? 0) - left) * scale,
    y: MARGIN + ((ys[atom] ?? 0) - top) * scale,
  }));
  const texts = atoms.map((atom) => labelOf(molecule, atom));
  const lines = Array.from({ length: molecule.getBonds() }, (_, bond) => {
    const [from, to] = [molecule.getBondAtom(0, bond), molecule.getBondAtom(1, bond)];
    const [start, end] = [places[from], places[to]];
    if (!start || !end) return [];
    return bondLines(start, end, Math.max(1, molecule.getBondOrder(bond)), [
      texts[from] !== '',
      texts[to] !== '',
    ]);
  }).flat();
  return {
    width: Math.max(...places.map(({ x }) => x)) + MARGIN,
    height: Math.max(...places.map(({ y }) => y)) + MARGIN,
    lines,
    labels: places.flatMap((place, atom) => (texts[atom] ? [{ ...place, text: texts[atom] }] : [])),
  };
}
