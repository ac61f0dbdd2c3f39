import type { BenchLine, BenchState } from '@core/emulsions/bench/bench-state';
import { withShare, withTotal } from '@core/emulsions/bench/shares';

/** A change of what stands on the bench: the old state in, the new one out. */
export type BenchEdit = (state: BenchState) => BenchState;
export type BenchList = 'oils' | 'emulsifiers';

export const EMPTY_BENCH: BenchState = {
  title: '',
  formulaId: null,
  emulsionType: 'o/w',
  oils: [],
  emulsifiers: [],
  rest: [],
  targetHlb: null,
};

/** Adds a material once; one that stands there already stays as it is. */
export function addLine(list: BenchList, line: BenchLine): BenchEdit {
  return (state) =>
    state[list].some((known) => known.materialId === line.materialId)
      ? state
      : { ...state, [list]: [...state[list], line] };
}

export function removeLine(list: BenchList, index: number): BenchEdit {
  return (state) => ({ ...state, [list]: state[list].filter((_, at) => at !== index) });
}

export function setPercent(list: BenchList, index: number, percent: number): BenchEdit {
  return (state) => ({
    ...state,
    [list]: state[list].map((line, at) => (at === index ? { ...line, percent } : line)),
  });
}

function withLevels(state: BenchState, levels: readonly number[]): BenchState {
  return {
    ...state,
    emulsifiers: state.emulsifiers.map((line, at) => ({ ...line, percent: levels[at] ?? 0 })),
  };
}

/** Gives one emulsifier another share of their total, 0 to 100 %. */
export function setShare(index: number, share: number): BenchEdit {
  return (state) =>
    withLevels(
      state,
      withShare(
        state.emulsifiers.map((line) => line.percent),
        index,
        share,
      ),
    );
}

/** Gives all emulsifiers together another level, % of the formula. */
export function setTotal(total: number): BenchEdit {
  return (state) =>
    withLevels(
      state,
      withTotal(
        state.emulsifiers.map((line) => line.percent),
        total,
      ),
    );
}

/** Gives some of the emulsifiers new levels, by material; the others keep theirs. */
export function setLevels(lines: readonly BenchLine[]): BenchEdit {
  const levels = new Map(lines.map((line) => [line.materialId, line.percent]));
  return (state) => ({
    ...state,
    emulsifiers: state.emulsifiers.map((line) => ({
      ...line,
      percent: levels.get(line.materialId) ?? line.percent,
    })),
  });
}

/** Puts a system on the bench in place of the one that stands there. */
export function putSystem(lines: readonly BenchLine[]): BenchEdit {
  return (state) => ({
    ...state,
    emulsifiers: lines.map(({ materialId, percent }) => ({ materialId, percent })),
  });
}
