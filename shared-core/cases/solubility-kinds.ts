import { z } from 'zod';
import type { GroupCounts } from '../solubility/from-groups';
import { figureOf, figuresOf } from './form-kind';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const parts = { d: number, p: number, h: number };
const hansen = z.object(parts);
const groups = z.record(z.string(), number, 'must give counts by group id');

const linesOf = (counts: GroupCounts): { group: string; count: number }[] =>
  Object.entries(counts).map(([group, count]) => ({ group, count }));
const sides = (a: z.infer<typeof hansen>, b: z.infer<typeof hansen>): Record<string, number> => ({
  ...{ d1: a.d, p1: a.p, h1: a.h },
  ...{ d2: b.d, p2: b.p, h2: b.h },
});
const ALL = { d: 'd', p: 'p', h: 'h' };

/** Solubility parameters, through the forms of the screens. */
export const SOLUBILITY_KINDS: Readonly<Record<string, Kind>> = {
  'hansen-total': kind(hansen, (values) => figureOf({ form: 'hansen-total', values }, 'total')),
  'hansen-distance': kind(z.object({ a: hansen, b: hansen }), ({ a, b }) =>
    figureOf({ form: 'hansen-distance', values: sides(a, b) }, 'distance'),
  ),
  'hansen-red': kind(
    z.object({ solute: hansen, radius: number, solvent: hansen }),
    ({ solute, radius, solvent }) =>
      figureOf({ form: 'hansen-distance', values: { ...sides(solute, solvent), radius } }, 'red'),
  ),
  'hansen-blend': kind(
    z.object({ components: z.array(z.object({ volumeFraction: number, ...parts }), 'must be a list') }),
    ({ components }) =>
      figuresOf(
        {
          form: 'hansen-blend',
          rows: components.map(({ volumeFraction, ...of }) => ({ parts: volumeFraction, ...of })),
        },
        ALL,
      ),
  ),
  'hoftyzer-van-krevelen': kind(z.object({ groups, molarVolume: number }), (i) =>
    figuresOf(
      { form: 'hansen-from-groups', values: { volume: i.molarVolume }, rows: linesOf(i.groups) },
      ALL,
    ),
  ),
  fedors: kind(z.object({ groups }), (i) =>
    figuresOf(
      { form: 'parameter-from-groups', rows: linesOf(i.groups) },
      { delta: 'delta', molarVolume: 'volume' },
    ),
  ),
  'hlb-solubility-parameter': kind(z.object({ hlb: number }), (values) =>
    figureOf({ form: 'hlb-parameter', values }, 'parameter'),
  ),
};
