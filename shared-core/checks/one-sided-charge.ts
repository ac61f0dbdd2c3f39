import { climateOutlook } from '../emulsions/climate/climate';
import type { CheckRule } from './check';

/** An o/w emulsion on ionic or on non-ionic emulsifiers alone has a weak side in frost or in heat. */
export const oneSidedCharge: CheckRule = {
  id: 'one-sided-charge',
  name: 'Climate: ionic and non-ionic together',
  tells: 'the emulsifiers are all ionic or all non-ionic, and one climate is the weak side',
  judge({ content, lines }) {
    if (content.productType !== 'o/w emulsion') return [];
    const outlook = climateOutlook(lines);
    if (outlook.system !== 'ionic only' && outlook.system !== 'non-ionic only') return [];
    const ionicOnly = outlook.system === 'ionic only';
    const weak = ionicOnly ? outlook.frost : outlook.heat;
    const test = outlook.tests.map((one) => `${one.stress}: ${one.conditions}`).join('; ');
    return [
      {
        ruleId: 'one-sided-charge',
        severity: 'note',
        title: ionicOnly
          ? 'Ionic emulsifiers only: frost is the weak side'
          : 'Non-ionic emulsifiers with oxyethylene only: heat is the weak side',
        lines: [...outlook.ionic, ...outlook.nonIonic].map((bearer) => bearer.lineId),
        advice: `${weak.says} For all climates add ${ionicOnly ? 'a non-ionic' : 'a little of an anionic'} partner, and test it (${test}).`,
        source: weak.source,
      },
    ];
  },
};
