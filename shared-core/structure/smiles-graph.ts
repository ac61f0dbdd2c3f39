import { unreadable } from './smiles-fault';

/** An atom as a SMILES writes it. */
export interface WrittenAtom {
  /** As written: "C", "c", "Cl", "se". */
  symbol: string;
  aromatic: boolean;
  charge: number;
  /** Stated in brackets; 0 for an atom without them, whose hydrogens are implied. */
  hydrogens: number;
}

/** `symbol` is empty where no bond is written, or only its direction. */
export interface WrittenBond {
  from: number;
  to: number;
  symbol: string;
}

export interface WrittenGraph {
  atoms: WrittenAtom[];
  bonds: WrittenBond[];
}

const ATOM = /Cl|Br|[BCNOPSFI]|[bcnops]/y;
const BRACKET =
  /\[\d*([A-Z][a-z]?|se|as|te|si|[bcnops])(?:@[@A-Z\d]*)?(?:H(\d*))?(\++|-+|[+-]\d+)?(?::\d+)?\]/y;
const BOND = /[-=#$:/\\]/y;
const RING = /%\(\d+\)|%\d\d|\d/y;

const CHECK = 'Check it there, or draw the substance anew and copy its SMILES.';

/**
 * Reads a SMILES by its grammar (OpenSMILES 1.0, from memory). The structure library forgives a bond without a
 * neighbour, an empty bracket or a stray dot, and then answers with another substance than was meant.
 *
 * @throws Problem `invalid-input` that says what is wrong
 */
export function writtenGraph(text: string): WrittenGraph {
  return new GraphReader(text).read();
}

class GraphReader {
  private readonly graph: WrittenGraph = { atoms: [], bonds: [] };
  private readonly branches: number[] = [];
  private readonly rings = new Map<number, { atom: number; symbol: string | null }>();
  /** The atom that the next one joins; null at the start of a part. */
  private previous: number | null = null;
  /** A bond that waits for its second atom. */
  private bond: string | null = null;
  /** A branch has just opened and holds nothing yet. */
  private opened = false;
  private position = 0;

  constructor(private readonly text: string) {}

  read(): WrittenGraph {
    while (this.position < this.text.length) this.step();
    if (this.bond !== null) throw this.fault('a bond leads nowhere');
    if (this.previous === null) throw this.fault('a dot lacks a part on one of its sides');
    const [open] = this.rings.keys();
    if (open !== undefined) throw this.fault(`ring number ${open} is opened and never closed`);
    return this.graph;
  }

  private step(): void {
    const atom = this.take(ATOM);
    if (atom) return this.atom({ symbol: atom, aromatic: /^[a-z]/.test(atom), charge: 0, hydrogens: 0 });
    const bond = this.take(BOND);
    if (bond) return this.bondMark(bond);
    const ring = this.take(RING);
    if (ring) return this.ring(Number(ring.replace(/[%()]/g, '')));
    const mark = this.text.charAt(this.position);
    if (mark === '[') return this.bracketAtom();
    this.position += 1;
    if (mark === '(') return this.open();
    if (mark === ')') return this.close();
    if (mark === '.') return this.dot();
    throw this.fault(`“${mark}” is not an atom`, 'Write atoms by their symbols: CCO is ethanol.');
  }

  private take(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.position;
    const found = pattern.exec(this.text)?.[0];
    this.position += found?.length ?? 0;
    return found;
  }

  private bracketAtom(): void {
    BRACKET.lastIndex = this.position;
    const found = BRACKET.exec(this.text);
    const written = found?.[0] ?? this.text.slice(this.position, this.text.indexOf(']', this.position) + 1);
    this.position += written.length;
    if (!found) throw this.fault(`“${written}” is not an atom`, 'Write it like [Na+], [NH4+] or [nH].');
    const [, symbol = '', hydrogens, charge = ''] = found;
    this.atom({
      symbol,
      aromatic: /^[a-z]/.test(symbol),
      charge: chargeOf(charge),
      hydrogens: hydrogens === undefined ? 0 : Number(hydrogens || 1),
    });
  }

  private atom(atom: WrittenAtom): void {
    const index = this.graph.atoms.push(atom) - 1;
    if (this.previous !== null) this.join(this.previous, index, this.bond ?? '');
    this.previous = index;
    this.bond = null;
    this.opened = false;
  }

  private bondMark(mark: string): void {
    if (this.previous === null) throw this.fault('a bond comes before any atom');
    if (this.bond !== null) throw this.fault('there are two bonds side by side');
    this.bond = mark;
  }

  private open(): void {
    if (this.previous === null || this.opened) throw this.fault('a branch opens where no atom bears it');
    if (this.bond !== null) throw this.fault('a bond leads nowhere');
    this.branches.push(this.previous);
    this.opened = true;
  }

  private close(): void {
    if (this.bond !== null) throw this.fault('a bond leads nowhere');
    if (this.opened) throw this.fault('a bracket is empty');
    if (this.previous === null) throw this.fault('a dot lacks a part on one of its sides');
    this.previous = this.branches.pop() ?? null;
  }

  private dot(): void {
    if (this.bond !== null) throw this.fault('a bond leads nowhere');
    if (this.previous === null) throw this.fault('a dot lacks a part on one of its sides');
    this.previous = null;
    this.opened = false;
  }

  private ring(number: number): void {
    if (this.previous === null || this.opened) throw this.fault(`ring number ${number} follows no atom`);
    const symbol = this.bond;
    this.bond = null;
    const other = this.rings.get(number);
    if (!other) {
      this.rings.set(number, { atom: this.previous, symbol });
      return;
    }
    this.rings.delete(number);
    const [one, two] = [plain(other.symbol ?? ''), plain(symbol ?? '')];
    if (other.symbol !== null && symbol !== null && one !== two)
      throw this.fault(`ring number ${number} has one bond where it opens and another where it closes`);
    this.ringBond(other.atom, this.previous, one || two, number);
  }

  private ringBond(from: number, to: number, symbol: string, number: number): void {
    const bonded = this.graph.bonds.some(
      (bond) => (bond.from === from && bond.to === to) || (bond.from === to && bond.to === from),
    );
    if (from === to || bonded) throw this.fault(`ring number ${number} closes no ring`);
    this.join(from, to, symbol);
  }

  private join(from: number, to: number, symbol: string): void {
    this.graph.bonds.push({ from, to, symbol: plain(symbol) });
  }

  private fault(why: string, advice = CHECK) {
    return unreadable(this.text, why, advice);
  }
}

/** The direction of a bond at a double bond says nothing of its order. */
function plain(symbol: string): string {
  return symbol === '/' || symbol === '\\' ? '' : symbol;
}

function chargeOf(written: string): number {
  if (/\d/.test(written)) return Number(written);
  return written.startsWith('-') ? -written.length : written.length;
}
