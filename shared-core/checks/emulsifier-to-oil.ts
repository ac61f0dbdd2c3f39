import { pairingFacts, worksAsSoap } from '../emulsions/systems/character';
import { levelAgainstOil, OIL_RELATIONS, systemKind } from '../emulsions/systems/level';
import { percentFromPpm } from '../quantities/share';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';
import { percentText, sumPpm } from './facts';

/** Emulsifier goes with the oil: far too little leaves the drops bare, far too much is paid for in vain. */
export const emulsifierToOil: CheckRule = {
  id: 'emulsifier-to-oil',
  name: 'Enough emulsifier for the oil',
  tells: 'there is little emulsifier for the oil',
  judge({ emulsionType, emulsifiers, oils }) {
    if (emulsionType === null || emulsifiers.length === 0) return [];
    const kind = systemKind(
      emulsifiers.map(({ material }) => pairingFacts(material)),
      emulsionType,
    );
    const [level, oil] = [sumPpm(emulsifiers), sumPpm(oils)];
    const found = levelAgainstOil(kind, percentFromPpm(level), percentFromPpm(oil));
    if (!found || found.verdict === 'enough') return [];
    const little = found.verdict === 'too little';
    // Most of a fatty acid stays a wax beside the soap that is made of it.
    if (!little && emulsifiers.some(({ material }) => worksAsSoap(material))) return [];
    const { usual, least, most } = OIL_RELATIONS[kind];
    return [
      {
        ruleId: 'emulsifier-to-oil',
        severity: little ? 'warn' : 'note',
        title: `${percentText(level)} emulsifier to ${percentText(oil)} oil phase: ${found.parts.toFixed(1)} parts to 100`,
        lines: emulsifiers.map((line) => line.lineId),
        advice: little
          ? `A ${kind} system usually takes about ${usual} parts, and below ${least} the drops are likely to merge: raise it, then try a series of levels.`
          : `A ${kind} system usually takes about ${usual} parts; above ${most ?? usual} more rarely helps, and it may feel tacky: try a series of levels.`,
        source: COMMON_PRACTICE,
      },
    ];
  },
};
