import type { Candidate, Demand } from '@core/emulsions/optimise/demand';

/**
 * The optimiser's model by exhaustive search, written apart from it: every set of at most k emulsifiers, and for each
 * set every corner of the polytope of its levels (a linear or linear-fractional objective is best at a corner).
 */

/** a·x ≤ c. */
interface Inequality {
  a: number[];
  c: number;
}

const LEAST_USE = 0.01;
const EPSILON = 1e-9;

const isDescribed = (one: Candidate): boolean =>
  one.charge === 'non-ionic' && (one.architecture ?? 'classic') === 'classic' && one.hlb !== null;

function inequalities(set: readonly Candidate[], demand: Demand): Inequality[] {
  const ones = set.map(() => 1);
  const rows: Inequality[] = [
    { a: ones, c: demand.totalMaxPercent },
    { a: ones.map((one) => -one), c: -demand.totalMinPercent },
  ];
  if (demand.targetHlb === null) return rows;
  const [low, high] = [demand.targetHlb - demand.tolerance, demand.targetHlb + demand.tolerance];
  rows.push(
    { a: set.map((one) => (isDescribed(one) ? (one.hlb ?? 0) - high : 0)), c: 0 },
    { a: set.map((one) => (isDescribed(one) ? low - (one.hlb ?? 0) : 0)), c: 0 },
  );
  if (!set.every(isDescribed)) rows.push({ a: set.map((one) => (isDescribed(one) ? -1 : 1)), c: 0 });
  return rows;
}

/** Solves a square system by Gauss with pivoting; null when it is singular. */
function solveSquare(matrix: number[][], right: number[]): number[] | null {
  const n = right.length;
  const m = matrix.map((row, index) => [...row, right[index] ?? 0]);
  for (let column = 0; column < n; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < n; row += 1) {
      if (Math.abs(m[row]?.[column] ?? 0) > Math.abs(m[pivot]?.[column] ?? 0)) pivot = row;
    }
    const top = m[pivot] ?? [];
    if (Math.abs(top[column] ?? 0) < 1e-12) return null;
    [m[column], m[pivot]] = [top, m[column] ?? []];
    for (let row = 0; row < n; row += 1) {
      if (row === column) continue;
      const factor = (m[row]?.[column] ?? 0) / (top[column] ?? 1);
      if (factor === 0) continue;
      m[row] = (m[row] ?? []).map((value, index) => value - factor * (top[index] ?? 0));
    }
  }
  return m.map((row, index) => (row[n] ?? 0) / (row[index] ?? 1));
}

function* subsets(n: number, size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let first = from; first <= n - size; first += 1) {
    for (const rest of subsets(n, size - 1, first + 1)) yield [first, ...rest];
  }
}

const SUBSETS = new Map<string, number[][]>();
function subsetsOf(n: number, size: number): number[][] {
  const key = `${n} ${size}`;
  const known = SUBSETS.get(key) ?? [...subsets(n, size)];
  SUBSETS.set(key, known);
  return known;
}

/** Calls back with every feasible corner of the levels of a set. */
function eachCorner(set: readonly Candidate[], demand: Demand, tell: (levels: number[]) => void): void {
  const n = set.length;
  const rows = inequalities(set, demand);
  const low = set.map((one) => Math.max(one.minPercent, LEAST_USE));
  const high = set.map((one) => one.maxPercent);
  const feasible = (x: number[]): boolean =>
    x.every((value, i) => value >= (low[i] ?? 0) - EPSILON && value <= (high[i] ?? 0) + EPSILON) &&
    rows.every(({ a, c }) => a.reduce((sum, by, i) => sum + by * (x[i] ?? 0), 0) <= c + 1e-8);
  for (let free = 0; free <= Math.min(n, rows.length); free += 1) {
    for (const loose of subsetsOf(n, free)) {
      for (let ends = 0; ends < 2 ** (n - free); ends += 1) {
        const x = Array.from({ length: n }, () => 0);
        let bit = 0;
        for (let i = 0; i < n; i += 1) {
          if (loose.includes(i)) continue;
          x[i] = ((ends >> bit) & 1 ? high[i] : low[i]) ?? 0;
          bit += 1;
        }
        for (const tight of subsetsOf(rows.length, free)) {
          const matrix = tight.map((row) => loose.map((i) => rows[row]?.a[i] ?? 0));
          const right = tight.map((row) => {
            const { a, c } = rows[row] ?? { a: [], c: 0 };
            return a.reduce((left, by, i) => (loose.includes(i) ? left : left - by * (x[i] ?? 0)), c);
          });
          const solved = free === 0 ? [] : solveSquare(matrix, right);
          if (!solved) continue;
          const corner = [...x];
          loose.forEach((i, index) => (corner[i] = solved[index] ?? 0));
          if (feasible(corner)) tell(corner);
        }
      }
    }
  }
}

/** The pairing rules again, in words of their own. */
function keepsRules(set: readonly Candidate[], demand: Demand): boolean {
  const some = (test: (one: Candidate) => boolean): boolean => set.some(test);
  const cationic = some((one) => one.charge === 'cationic');
  const anionic = some((one) => one.charge === 'anionic');
  const low = (one: Candidate): boolean => one.hlb === null || one.hlb <= 8;
  return demand.rules.every((rule) => {
    if (rule === 'one sign of charge') return !(cationic && anionic);
    if (rule === 'serves the type') {
      return some((one) => [null, 'both', demand.emulsionType].includes(one.emulsionType));
    }
    if (rule === 'one that disperses in water') {
      return some(
        (one) =>
          one.charge === 'anionic' ||
          one.charge === 'cationic' ||
          one.charge === 'amphoteric' ||
          (one.hlb === null ? one.emulsionType !== 'w/o' : one.hlb >= 10),
      );
    }
    if (rule === 'waxy with liquid') {
      const polymers = set.filter(
        (one) => one.architecture === 'polymeric' || one.architecture === 'particulate',
      );
      if (polymers.some((one) => one.emulsionType !== 'o/w')) return true;
      return (
        some((one) => one.character === 'waxy' && low(one)) &&
        some((one) => one.character === 'liquid' && low(one))
      );
    }
    if (rule === 'a cationic') return cationic;
    if (rule === 'ionic with a non-ionic')
      return (cationic || anionic) && some((one) => one.charge === 'non-ionic');
    return !cationic || some((one) => one.charge === 'non-ionic' && (one.hlb ?? 0) >= 8);
  });
}

/** Whether a candidate may take part at all. */
function takesPart(one: Candidate, demand: Demand): boolean {
  if (demand.excluded.includes(one.id) || one.maxPercent < LEAST_USE) return false;
  if (demand.objective === 'least cost' && one.costPerKg === null) return false;
  if (demand.targetHlb === null || isDescribed(one)) return true;
  // A classic non-ionic without an HLB is refused rather than counted as one that HLB does not describe.
  if (one.charge === 'non-ionic' && (one.architecture ?? 'classic') === 'classic') return false;
  if (demand.pinned.includes(one.id)) return true;
  if (one.charge === 'cationic')
    return demand.rules.some((rule) => rule === 'a cationic' || rule === 'ionic with a non-ionic');
  return one.charge === 'anionic' && demand.rules.includes('ionic with a non-ionic');
}

function bestOfSet(set: readonly Candidate[], demand: Demand): number | null {
  let best: number | null = null;
  let [least, most] = [Infinity, -Infinity];
  eachCorner(set, demand, (levels) => {
    if (demand.objective === 'least cost') {
      const cost = levels.reduce((sum, level, i) => sum + (level / 100) * (set[i]?.costPerKg ?? 0), 0);
      best = best === null ? cost : Math.min(best, cost);
      return;
    }
    best = set.length;
    const described = levels.map((level, i) => (set[i] && isDescribed(set[i]) ? level : 0));
    const mean =
      described.reduce((sum, level, i) => sum + level * (set[i]?.hlb ?? 0), 0) /
      described.reduce((a, b) => a + b, 0);
    [least, most] = [Math.min(least, mean), Math.max(most, mean)];
  });
  if (best === null || demand.objective !== 'nearest HLB') return best;
  const target = demand.targetHlb ?? 0;
  return Math.max(least - target, target - most, 0);
}

/** How many sets a search over `n` candidates looks at. */
export function countSets(n: number, atMost: number): number {
  let [sum, product] = [0, 1];
  for (let size = 1; size <= Math.min(atMost, n); size += 1) {
    product = (product * (n - size + 1)) / size;
    sum += product;
  }
  return Math.round(sum);
}

/** Every set of candidates that meets the demand, with the best value that it can have. */
function* feasibleSets(candidates: readonly Candidate[], demand: Demand): Generator<[Candidate[], number]> {
  const allowed = candidates.filter((one) => takesPart(one, demand));
  for (let size = 1; size <= Math.min(demand.atMost, allowed.length); size += 1) {
    for (const chosen of subsets(allowed.length, size)) {
      const set = chosen.map((index) => allowed[index]).filter((one) => one !== undefined);
      const ids = set.map((one) => one.id);
      if (!demand.pinned.every((id) => ids.includes(id)) || !keepsRules(set, demand)) continue;
      if (demand.targetHlb !== null && !set.some(isDescribed)) continue;
      const value = bestOfSet(set, demand);
      if (value !== null) yield [set, value];
    }
  }
}

/** The optimum of the model by looking at everything; null when nothing is feasible. */
export function exhaustiveOptimum(candidates: readonly Candidate[], demand: Demand): number | null {
  let best: number | null = null;
  for (const [, value] of feasibleSets(candidates, demand)) {
    if (best === null || value < best) best = value;
  }
  return best;
}

/** The best value of every set of candidates that meets the demand, lowest first. */
export function exhaustiveValues(candidates: readonly Candidate[], demand: Demand): number[] {
  return [...feasibleSets(candidates, demand)].map(([, value]) => value).sort((a, b) => a - b);
}
