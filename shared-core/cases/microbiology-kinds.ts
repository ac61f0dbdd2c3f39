import { z } from 'zod';
import { ORGANISM_TYPES, type ChallengeStandard } from '../microbiology/challenge-test';
import { COUNT_GROUPS } from '../microbiology/counts';
import { figureOf, verdictOf } from './form-kind';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const organism = z.object({
  organism: z.string('must be a text'),
  type: z.enum(ORGANISM_TYPES, `must be ${ORGANISM_TYPES.join(', ')}`),
  logReductions: z.record(z.string(), number, 'must give log reductions by day'),
});
const test = z.object({ organisms: z.array(organism, 'must be a list') });

/** A challenge test by a standard, as its form judges it. */
function challenge(standard: ChallengeStandard): Kind {
  return kind(test, ({ organisms }) =>
    verdictOf({
      form: 'challenge-test',
      values: { standard },
      rows: organisms.map(({ organism: name, type, logReductions }) => ({
        organism: name,
        type,
        ...Object.fromEntries(Object.entries(logReductions).map(([day, log]) => [`day${day}`, log])),
      })),
    }),
  );
}

/** Microbiology, through the forms of the screens. */
export const MICROBIOLOGY_KINDS: Readonly<Record<string, Kind>> = {
  'preservation-iso11930': challenge('ISO 11930'),
  'preservation-ph-eur': challenge('Ph. Eur. 5.1.3'),
  'preservation-usp51': challenge('USP 51'),
  'log-reduction': kind(z.object({ initial: number, final: number }), (values) =>
    figureOf({ form: 'log-reduction', values }, 'log'),
  ),
  'log-to-percent': kind(z.object({ logReduction: number }), ({ logReduction }) =>
    figureOf({ form: 'log-to-percent', values: { log: logReduction } }, 'percent'),
  ),
  'micro-limit': kind(
    z.object({
      productGroup: z.enum(COUNT_GROUPS, `must be ${COUNT_GROUPS.join(' or ')}`),
      totalCount: number,
      specifiedAbsent: z.boolean('must be true or false'),
    }),
    ({ productGroup, totalCount, specifiedAbsent }) =>
      verdictOf({
        form: 'micro-limit',
        values: {
          group: productGroup,
          count: totalCount,
          specified: specifiedAbsent ? 'absent' : 'found',
        },
      }),
  ),
};
