import { regionsOf } from '../limits/situation';
import { saysNano } from '../substances/names';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Nanomaterials: the word on the label, and the notification before the product may be sold. */
export const nano: CheckRule = {
  id: 'nano',
  name: 'Nanomaterials are named and notified',
  tells: 'a nanomaterial must be named as such on the label, and notified',
  judge({ used, content }) {
    const lines = used.filter(({ material }) => material.composition.some(({ inci }) => saysNano(inci)));
    const european = regionsOf(content.market).some(
      (region) => region === 'EU' || region === 'Great Britain',
    );
    if (lines.length === 0 || !european) return [];
    const sprayed = content.market.dispenser !== null;
    return [
      {
        ruleId: 'nano',
        severity: sprayed ? 'warn' : 'note',
        title: `Nanomaterial: ${namesOf(lines)}`,
        lines: lines.map((line) => line.lineId),
        advice: `The label writes “(nano)” after its name. Unless it is a colorant, preservative or UV filter that the annexes list as nano, the authority is notified six months before the product is sold.${sprayed ? ' Most listed nanomaterials are not allowed where they may be breathed in: this one is dispensed as a spray or powder.' : ''} Check the text in force.`,
        source: {
          text: 'Regulation (EC) No 1223/2009, Articles 16 and 19(1)(g), and Annexes IV to VI',
          basis: 'memory',
        },
      },
    ];
  },
};
