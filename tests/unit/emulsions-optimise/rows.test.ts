import fc from 'fast-check';
import { playerBounds } from '@core/emulsions/optimise/bound';
import { PAIRING_RULES, rulesFor, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { lpText, relaxed, type LpModel, type Row } from '@core/emulsions/optimise/lp-text';
import { groupsOf, keepsRule, pairingRows, SIGN } from '@core/emulsions/optimise/pairing';
import type { Player } from '@core/emulsions/optimise/prepare';
import { useRows } from '@core/emulsions/optimise/use-rows';
import { ARCHITECTURES, CHARGES, EMULSION_TYPES } from '@core/materials/vocabulary';
import { describe, expect, it } from 'vitest';

const one = (id: string, part: Partial<Candidate> = {}): Candidate => ({
  ...{ id, name: id, hlb: 12, charge: 'non-ionic', architecture: 'classic', emulsionType: 'o/w' },
  ...{ character: 'waxy', costPerKg: 1000, minPercent: 0.5, maxPercent: 5, ...part },
});
const anyCandidate: fc.Arbitrary<Candidate> = fc
  .record({
    hlb: fc.option(fc.double({ min: 1, max: 20, noNaN: true })),
    charge: fc.option(fc.constantFrom(...CHARGES)),
    architecture: fc.option(fc.constantFrom(...ARCHITECTURES)),
    emulsionType: fc.option(fc.constantFrom(...EMULSION_TYPES)),
    character: fc.option(fc.constantFrom('waxy', 'liquid')),
  })
  .map((part) => one('some', part));

const meets = ({ sense, rhs }: Row, sum: number): boolean =>
  sense === '>=' ? sum >= rhs - 1e-9 : sense === '<=' ? sum <= rhs + 1e-9 : Math.abs(sum - rhs) < 1e-9;
const sumOf = ({ terms }: Pick<Row, 'terms'>, at: ReadonlyMap<string, number>): number =>
  terms.reduce((sum, [by, name]) => sum + by * (at.get(name) ?? 0), 0);

describe('a pairing rule as rows', () => {
  it.each(PAIRING_RULES)('“%s” holds of a choice just where its plain words do', (rule) => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyCandidate, fc.boolean()), { minLength: 1, maxLength: 6 }),
        fc.constantFrom<Demand['emulsionType']>('o/w', 'w/o'),
        (shelf, type) => {
          const used = shelf.map(([who], at) => ({ groups: groupsOf(who, type), y: `y${at}` }));
          const rows = pairingRows(rule, used);
          // The sign of charge is free: one of its two values must do.
          const holds = [0, 1].some((sign) => {
            const at = new Map([
              [SIGN, sign],
              ...shelf.map(([, taken], index) => [`y${index}`, taken ? 1 : 0] as const),
            ]);
            return rows.every((row) => meets(row, sumOf(row, at)));
          });
          const chosen = used.filter((_, index) => shelf[index]?.[1]).map(({ groups }) => groups);
          expect(holds).toBe(keepsRule(rule, chosen));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('asks of each type of emulsion what the trade asks', () => {
    expect(rulesFor('w/o', true)).toEqual(['one sign of charge', 'serves the type', 'waxy with liquid']);
    expect(rulesFor('o/w', false)).toEqual([
      'one sign of charge',
      'serves the type',
      'one that disperses in water',
    ]);
    expect(rulesFor('o/w', true)).toContain('ionic with a non-ionic');
    expect(rulesFor('cationic o/w', true)).toEqual([
      ...[
        'one sign of charge',
        'serves the type',
        'one that disperses in water',
        'a cationic',
        'cationic with a non-ionic',
      ],
    ]);
  });

  it('lets a polymer that holds a w/o film stand for both partners, and none of unknown consistency for either', () => {
    const alone = groupsOf(
      one('P', { architecture: 'polymeric', emulsionType: 'w/o', character: null, hlb: null }),
      'w/o',
    );
    expect([alone.waxy, alone.liquid]).toEqual([true, true]);
    const unknown = groupsOf(one('U', { character: null, hlb: 4, emulsionType: 'w/o' }), 'w/o');
    expect([unknown.waxy, unknown.liquid]).toEqual([false, false]);
    const high = groupsOf(one('H', { hlb: 8.1, emulsionType: 'w/o' }), 'w/o');
    expect(high.waxy).toBe(false);
    expect(groupsOf(one('L', { hlb: 8, emulsionType: 'w/o' }), 'w/o').waxy).toBe(true);
  });

  it('holds a level between its ends where it is taken, at nothing where it is not', () => {
    const rows = useRows({ x: 'x', y: 'y' }, { least: 0.5, most: 4 });
    const holds = (x: number, y: number) =>
      rows.every((row) =>
        meets(
          row,
          sumOf(
            row,
            new Map([
              ['x', x],
              ['y', y],
            ]),
          ),
        ),
      );
    expect([holds(0, 0), holds(0.5, 1), holds(4, 1)]).toEqual([true, true, true]);
    expect([holds(0.4, 1), holds(4.1, 1), holds(0.5, 0), holds(0, 1)]).toEqual([false, false, false, false]);
  });
});

describe('the bound of a relaxed choice', () => {
  const number = fc.integer({ min: -9, max: 9 });
  const players = fc.array(
    fc.tuple(number, number, fc.nat(3), fc.constantFrom(0, 0, 1, 4), fc.constantFrom(true, true, false)),
    { minLength: 1, maxLength: 4 },
  );
  const rows = fc.array(
    fc.tuple(
      fc.array(number, { minLength: 8, maxLength: 8 }),
      fc.constantFrom<Row['sense']>('<=', '>=', '='),
      fc.integer({ min: 0, max: 3 }),
      fc.double({ min: -5, max: 5, noNaN: true }),
    ),
    { minLength: 1, maxLength: 3 },
  );

  it('lies at or below every choice that meets the rows, over all and for each one used, at any prices', () => {
    fc.assert(
      fc.property(players, rows, fc.integer({ min: 1, max: 4 }), fc.nat(), (made, asked, atMost, pick) => {
        const pins = made.filter(([, , , , pinned]) => pinned).length;
        fc.pre(pins <= atMost);
        const all = made.map(([, , , , pinned], at) => ({ x: `x${at}`, y: `y${at}`, pinned }) as Player);
        const limits = new Map(
          made.map(([, , least, more], at) => [`y${at}`, { least, most: least + more }]),
        );
        const possible = choices(all, limits, atMost);
        // One of them at least meets the rows: each leaves it some room, or none.
        const met = possible[pick % possible.length] ?? new Map<string, number>();
        const rowOf = (terms: Row['terms'], sense: Row['sense'], room: number): Row => {
          const slack = sense === '<=' ? room : sense === '>=' ? -room : 0;
          return { demand: 'some', terms, sense, rhs: sumOf({ terms }, met) + slack };
        };
        const model: LpModel = {
          objective: made.flatMap(([rate, fixed], at): [number, string][] => [
            [rate, `x${at}`],
            [fixed, `y${at}`],
          ]),
          rows: asked.map(([by, sense, room]) =>
            rowOf(
              made.flatMap((_, at): [number, string][] => [
                [by[at] ?? 0, `x${at}`],
                [by[at + 4] ?? 0, `y${at}`],
              ]),
              sense,
              room,
            ),
          ),
          upperBounds: new Map(),
          binaries: all.map(({ y }) => y),
        };
        const priced = model.rows.map((row, at): [Row, number] => [row, asked[at]?.[3] ?? 0]);
        const { all: bound, using } = playerBounds({ model, players: all, limits, priced, atMost });
        for (const at of possible) {
          if (!model.rows.every((row) => meets(row, sumOf(row, at)))) continue;
          const costs = sumOf({ terms: model.objective }, at);
          expect(costs).toBeGreaterThanOrEqual(bound - 1e-6);
          for (const { y } of all)
            if (at.get(y)) expect(costs).toBeGreaterThanOrEqual((using.get(y) ?? Infinity) - 1e-6);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('takes a price of the sign that its row allows, none of the other, by hand', () => {
    // One material, pinned at a level of 1 that costs 2; the row asks for 0 of it or for 2 of it.
    const only = { x: 'x', y: 'y', pinned: true } as Player;
    const bound = (sense: Row['sense'], rhs: number, price: number) => {
      const row: Row = { demand: 'some', terms: [[1, 'x']], sense, rhs };
      const model: LpModel = { objective: [[2, 'x']], rows: [row], upperBounds: new Map(), binaries: ['y'] };
      const limits = new Map([['y', { least: 1, most: 1 }]]);
      return playerBounds({ model, players: [only], limits, priced: [[row, price]], atMost: 1 }).all;
    };
    expect([bound('>=', 0, 1), bound('<=', 2, -1), bound('=', 1, 7)]).toEqual([1, 1, 2]);
    expect([bound('>=', 0, -5), bound('<=', 2, 5)]).toEqual([2, 2]);
  });

  /** Every set of at most so many that holds the pinned ones, each at its least, its middle or its most. */
  function choices(
    all: readonly Player[],
    limits: ReadonlyMap<string, { least: number; most: number }>,
    atMost: number,
  ) {
    let found: Map<string, number>[] = [new Map()];
    for (const { x, y, pinned } of all) {
      const { least, most } = limits.get(y) ?? { least: 0, most: 0 };
      const taken = [...new Set([least, (least + most) / 2, most])];
      found = found.flatMap((at) => [
        ...(pinned ? [] : [at]),
        ...taken.map((level) => new Map([...at, [y, 1] as const, [x, level] as const])),
      ]);
    }
    return found.filter((at) => all.filter(({ y }) => at.get(y)).length <= atMost);
  }
});

describe('a model as text', () => {
  const model: LpModel = {
    objective: [
      [2, 'x1'],
      [-0.5, 'y1'],
    ],
    rows: [
      {
        demand: 'a',
        terms: [
          [1, 'x1'],
          [0, 'x2'],
          [-3, 'y1'],
        ],
        sense: '<=',
        rhs: -4.5,
      },
      { demand: 'b', terms: [], sense: '>=', rhs: 1 },
    ],
    upperBounds: new Map([['x1', 5]]),
    binaries: ['y1'],
  };

  it('has each part under its head, terms of nothing left out, and a row of nothing still a row', () => {
    expect(
      lpText(model)
        .split('\n')
        .map((line) => line.trim()),
    ).toEqual([
      ...[
        'Minimize',
        'obj: + 2 x1',
        '- 0.5 y1',
        'Subject To',
        'r0: + 1 x1',
        '- 3 y1 <= -4.5',
        'r1: 0 y1 >= 1',
      ],
      ...['Bounds', '0 <= x1 <= 5', 'Binary', 'y1', 'End', ''],
    ]);
  });

  it('relaxed, has yes and no as anything between, and is otherwise the same', () => {
    const loose = relaxed(model);
    expect(loose.binaries).toEqual([]);
    expect([...loose.upperBounds]).toEqual([
      ['x1', 5],
      ['y1', 1],
    ]);
    expect(loose.rows).toBe(model.rows);
    expect([...model.upperBounds]).toEqual([['x1', 5]]);
    expect(lpText(loose)).not.toContain('Binary');
  });

  it('writes no binary noise, and keeps fifteen digits', () => {
    const text = (coefficient: number) => lpText({ ...model, objective: [[coefficient, 'x1']] });
    expect(text(0.1 + 0.2)).toContain('+ 0.3 x1');
    expect(text(123456.789012345)).toContain('+ 123456.789012345 x1');
  });
});
