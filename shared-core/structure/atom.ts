/** An atom of a structure. */
export interface Atom {
  index: number;
  element: string;
  /** Of a labelled atom, 13 in [13C]; 0 for the natural mixture. */
  massNumber: number;
  charge: number;
  /** Hydrogens on it, implicit and explicit. */
  hydrogens: number;
  aromatic: boolean;
  inRing: boolean;
  /** Heavy neighbours with the order of the bond as drawn. */
  bonds: { to: number; order: number }[];
}

/** An ion beside the main part. `kind` is its element, "NH4", or "organic" for anything larger. */
export interface CounterIon {
  kind: string;
  charge: number;
}
