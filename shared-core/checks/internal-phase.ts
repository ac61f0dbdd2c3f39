import { internalPhase, CLOSE_PACKING } from '../emulsions/internal-phase';
import type { CheckRule } from './check';

/** Above the closest packing of spheres the drops of the inner phase flatten against each other. */
export const innerPhase: CheckRule = {
  id: 'internal-phase',
  name: 'Volume of the internal phase',
  tells: 'the internal phase is larger than spheres can be packed',
  judge({ emulsionType, used }) {
    if (emulsionType === null) return [];
    const phase = internalPhase(used, emulsionType);
    if (!phase || phase.worked.value <= 100 * CLOSE_PACKING) return [];
    return [
      {
        ruleId: 'internal-phase',
        severity: 'note',
        title: `The internal phase (${phase.inner}) fills ${phase.worked.value.toFixed(0)} % of the volume, above ${(100 * CLOSE_PACKING).toFixed(0)} %`,
        lines: phase.lines,
        advice:
          `Drops packed so closely are no longer round: it stiffens, and may invert or break when it is made too fast. Add the internal phase slowly, use an emulsifier meant for such emulsions, or lower it. ${phase.worked.cautions.join(' ')}`.trim(),
        source: phase.worked.sources[0]!,
      },
    ];
  },
};
