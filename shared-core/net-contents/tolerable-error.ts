import { between } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';

export const DIRECTIVE: Source = {
  text: 'Council Directive 76/211/EEC on prepackages, Annex I, 2.4 and 2.5, Brussels 1976',
  basis: 'read',
};
const ABOVE_1000: Source = {
  text: 'the same Directive above 1,000 g or mL, and UK SI 2006/659, Schedule 2, above 10,000',
  basis: 'memory',
};
export const CHECK_THE_LAW = 'Law and guidance change, and differ by country: check the text in force.';

/** Up to which nominal contents, and what may be missing: a share, or an amount. */
const BANDS: readonly { upTo: number; percent?: number; amount?: number }[] = [
  { upTo: 50, percent: 9 },
  { upTo: 100, amount: 4.5 },
  { upTo: 200, percent: 4.5 },
  { upTo: 300, amount: 9 },
  { upTo: 500, percent: 3 },
  { upTo: 1_000, amount: 15 },
  { upTo: 10_000, percent: 1.5 },
  { upTo: 15_000, amount: 150 },
  { upTo: Infinity, percent: 1 },
];

/** A share worked out as an amount is rounded up to a tenth; binary noise does not push it a tenth higher. */
function upToATenth(amount: number): number {
  return Math.ceil(amount * 10 - 1e-9) / 10;
}

/**
 * Tolerable negative error of a pack.
 *
 * @param nominal what the label says, g or mL, 5 and more
 * @returns g or mL
 * @throws Problem `invalid-input`
 */
export function tolerableError(nominal: number, unit: string): Worked {
  between(nominal, 5, 50_000, 'Nominal contents', unit);
  const band = BANDS.find(({ upTo }) => nominal <= upTo) ?? BANDS[0];
  const sources = nominal > 1000 ? [DIRECTIVE, ABOVE_1000] : [DIRECTIVE];
  const says = 'tolerable negative error (TNE)';
  const step =
    band?.percent === undefined
      ? {
          says: `${says} in this band of contents`,
          shows: show(band?.amount ?? 0),
          result: band?.amount ?? 0,
          unit,
        }
      : {
          says: `${says}: ${band.percent} % of the contents, rounded up to a tenth`,
          shows: `${band.percent} % × ${show(nominal)} = ${show((nominal * band.percent) / 100)}, up to`,
          result: upToATenth((nominal * band.percent) / 100),
          unit,
        };
  return worked([step], sources, [CHECK_THE_LAW]);
}

/** T1, which few packs may fall below, and T2, which none may: nominal less once and twice the TNE. */
export function prepackageLimits(nominal: number, unit: string): { t1: Worked; t2: Worked } {
  const error = tolerableError(nominal, unit);
  const limit = (times: 1 | 2): Worked =>
    worked(
      [
        ...error.steps,
        {
          says: times === 1 ? 'T1: contents − TNE' : 'T2: contents − 2 × TNE',
          shows: `${show(nominal)} − ${times === 1 ? '' : '2 × '}${show(error.value)}`,
          result: nominal - times * error.value,
          unit,
        },
      ],
      error.sources,
      error.cautions,
    );
  return { t1: limit(1), t2: limit(2) };
}
