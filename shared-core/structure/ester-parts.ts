import type { Atom } from './atom';
import type { FoundGroups } from './find-groups';
import type { Graph } from './graph';
import type { Head } from './heads';
import { massOfAtoms } from './molar-mass';

/** The fatty acids of a polyol ester as free acids, g/mol; or why Griffin's S and A do not describe it. */
export type EsterParts = { count: number; mass: number } | { notPolyolEster: string };

/** The hydroxyl that an acid loses to its ester. */
const HYDROXYL = massOfAtoms(
  new Map([
    ['O', 1],
    ['H', 1],
  ]),
);

/**
 * Parts an ester into its fatty acids and its alcohol. Griffin's 20 × (1 − S/A) takes all that is not fatty acid for
 * a polyol, so the acids must be fatty ones and the alcohol polyhydric, without a chain of its own.
 *
 * @param polyol the carbons that count as polyol
 */
export function esterParts(graph: Graph, found: FoundGroups, polyol: ReadonlySet<number>): EsterParts {
  const esters = found.heads.filter((head) => head.kind === 'ester');
  const oxygens = new Set(esters.flatMap((head) => head.alcoholOxygen ?? []));
  const acids = esters.map((ester) => acidOf(graph, ester));
  const reasons = [
    ...acids.map((acid) => whyNoFattyAcid(acid, found, polyol, oxygens)),
    ...esters.map((ester) => whyNoPolyol(graph, found, ester, polyol, oxygens)),
  ];
  const reason = reasons.find((one) => one !== null);
  if (reason) return { notPolyolEster: reason };
  const mass = acids.reduce((sum, acid) => sum + massOf(acid) + HYDROXYL, 0);
  return { count: esters.length, mass };
}

/** From the carbonyl carbon on, without the oxygen that joins the alcohol. */
function acidOf(graph: Graph, { carbonyl, alcoholOxygen }: Head): Atom[] {
  const start = graph.atom(carbonyl ?? -1);
  return start ? graph.reach(start, (atom) => atom.index === alcoholOxygen) : [];
}

function whyNoFattyAcid(
  acid: readonly Atom[],
  found: FoundGroups,
  polyol: ReadonlySet<number>,
  oxygens: ReadonlySet<number>,
): string | null {
  const why = acid.some((atom) => polyol.has(atom.index) || oxygens.has(atom.index))
    ? 'is part of the hydrophile, or is esterified itself'
    : whyNotFatty(acid, found);
  return (
    why && `One of its acids ${why}, so it is not a fatty acid: S and A describe esters of fatty acids only.`
  );
}

/** Fatty acids are aliphatic with one carboxyl group, from butyric acid on (IUPAC Gold Book, from memory). */
const FEWEST_CARBONS = 4;

/** What an acid has that no fatty acid has; null for a fatty acid, hydroxylated ones included. */
function whyNotFatty(acid: readonly Atom[], { heads }: FoundGroups): string | null {
  const carbons = acid.filter((atom) => atom.element === 'C').length;
  const own = new Set(acid.map((atom) => atom.index));
  const carboxyls = heads.filter(
    ({ kind, atoms }) =>
      ['carboxylic-acid', 'carboxylate', 'ester'].includes(kind) && atoms.some((index) => own.has(index)),
  ).length;
  if (carboxyls > 1) return `has ${carboxyls} carboxyl groups`;
  if (carbons < FEWEST_CARBONS) return `has ${carbons} carbons only`;
  if (acid.some((atom) => atom.inRing)) return 'holds a ring';
  const foreign = acid.find(({ element }) => element !== 'C' && element !== 'O');
  return foreign ? `holds ${foreign.element}` : null;
}

/** The alcohol is everything behind its oxygen, up to the oxygens of further esters. */
function whyNoPolyol(
  graph: Graph,
  { units }: FoundGroups,
  ester: Head,
  polyol: ReadonlySet<number>,
  oxygens: ReadonlySet<number>,
): string | null {
  const joint = graph.atom(ester.alcoholOxygen ?? -1);
  const start = joint && graph.neighbours(joint).find((next) => next.index !== ester.carbonyl);
  if (!start) return null;
  const alcohol = graph.reach(start, (atom) => oxygens.has(atom.index));
  const free = alcohol.filter((atom) => atom.element === 'O' && atom.hydrogens === 1).length;
  const esterified = alcohol
    .filter((atom) => atom.element === 'C')
    .flatMap((carbon) => graph.bonded(carbon, 'O', 1))
    .filter((oxygen) => oxygens.has(oxygen.index)).length;
  if (free + esterified < 2)
    return 'It is an ester of an alcohol with one hydroxyl only: 20 × (1 − S/A) describes esters of polyols, such as glycerol or sorbitan.';
  const hydrophile = new Set([...polyol, ...units.flatMap((unit) => unit.carbons)]);
  const chain = alcohol.some((atom) => atom.element === 'C' && !hydrophile.has(atom.index));
  return chain
    ? 'Its alcohol bears a chain or ring beside its hydroxyls, which S and A would count as polyol.'
    : null;
}

function massOf(atoms: readonly Atom[]): number {
  const counts = new Map<string, number>();
  for (const atom of atoms) {
    counts.set(atom.element, (counts.get(atom.element) ?? 0) + 1);
    counts.set('H', (counts.get('H') ?? 0) + atom.hydrogens);
  }
  return massOfAtoms(counts);
}
