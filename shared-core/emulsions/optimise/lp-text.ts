/** A linear term: coefficient and name of the variable. */
export type Term = readonly [coefficient: number, variable: string];

/** A row of a model. `demand` names what the maker asked for that this row expresses. */
export interface Row {
  demand: string;
  terms: Term[];
  sense: '<=' | '>=' | '=';
  rhs: number;
}

/** A mixed-integer linear model, to be minimised. Variables not bounded here run from 0 upwards. */
export interface LpModel {
  objective: Term[];
  rows: Row[];
  upperBounds: Map<string, number>;
  binaries: string[];
}

/** The linear relaxation of a model: every yes-or-no may be partial. */
export function relaxed(model: LpModel): LpModel {
  const upperBounds = new Map(model.upperBounds);
  for (const name of model.binaries) upperBounds.set(name, 1);
  return { ...model, upperBounds, binaries: [] };
}

/** Fifteen digits: all that a double holds, without its binary noise. */
function digits(value: number): string {
  return String(Number(value.toPrecision(15)));
}

function expression(terms: readonly Term[], fallback: string): string {
  const parts = terms
    .filter(([coefficient]) => coefficient !== 0)
    .map(([coefficient, name]) => `${coefficient < 0 ? '-' : '+'} ${digits(Math.abs(coefficient))} ${name}`);
  // Lines stay short: readers of the format cut long ones.
  return parts.length > 0 ? parts.join('\n ') : `0 ${fallback}`;
}

/** Writes a model in CPLEX LP format. */
export function lpText(model: LpModel): string {
  const anyVariable = model.binaries[0] ?? [...model.upperBounds.keys()][0] ?? 'none';
  const rows = model.rows.map(
    (row, index) => `r${index}: ${expression(row.terms, anyVariable)} ${row.sense} ${digits(row.rhs)}`,
  );
  const bounds = [...model.upperBounds].map(([name, high]) => `0 <= ${name} <= ${digits(high)}`);
  return [
    'Minimize',
    `obj: ${expression(model.objective, anyVariable)}`,
    'Subject To',
    ...rows,
    'Bounds',
    ...bounds,
    ...(model.binaries.length > 0 ? ['Binary', ...model.binaries] : []),
    'End',
    '',
  ].join('\n');
}
