import { esterParts } from './ester-parts';
import type { EsterParts } from './ester-parts';
import type { FoundGroups } from './find-groups';
import type { Graph } from './graph';
import { massOfAtoms } from './molar-mass';
import { massOfPolyol, polyolCarbons } from './polyol';

/** The water-loving part of a non-ionic, as Griffin weighs it. Masses in g/mol. */
export interface Hydrophile {
  oxyethyleneUnits: number;
  oxyethyleneMass: number;
  /** Polyhydric alcohol (glycerol, sorbitan, a sugar, a glycol), as the free alcohol. */
  polyolMass: number;
  acids: EsterParts;
}

/** C2H4O. */
const OXYETHYLENE = massOfAtoms(
  new Map([
    ['C', 2],
    ['H', 4],
    ['O', 1],
  ]),
);

/** Weighs oxyethylene and polyol in a molecule whose groups are known. */
export function weighHydrophile(graph: Graph, found: FoundGroups): Hydrophile {
  const units = found.units.filter((unit) => unit.kind === 'oxyethylene').length;
  const polyol = polyolCarbons(graph, found);
  return {
    oxyethyleneUnits: units,
    oxyethyleneMass: units * OXYETHYLENE,
    polyolMass: massOfPolyol(graph, polyol),
    acids: esterParts(graph, found, polyol),
  };
}
