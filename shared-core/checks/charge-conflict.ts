import { chargeConflicts } from '../emulsions/conflicts/charge-conflicts';
import type { CheckRule, FindingSeverity } from './check';

const SEVERITY: Record<ReturnType<typeof chargeConflicts>[number]['severity'], FindingSeverity> = {
  'forms a salt': 'stop',
  'may lose effect': 'warn',
  watch: 'note',
};

/** Opposite charges anywhere in the formula, not among the emulsifiers only. */
export const chargeConflict: CheckRule = {
  id: 'charge-conflict',
  name: 'No opposite charges',
  tells: 'anionic and cationic materials meet, and may fall out',
  judge({ lines }) {
    return chargeConflicts(lines).map((conflict) => ({
      ruleId: 'charge-conflict',
      severity: SEVERITY[conflict.severity],
      title: `${conflict.first.name} with ${conflict.second.name}: ${conflict.severity}`,
      lines: [conflict.first.lineId, conflict.second.lineId],
      advice: `${conflict.why} ${conflict.advice}`,
      source: conflict.source,
    }));
  },
};
