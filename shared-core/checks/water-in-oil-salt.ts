import { isElectrolyte } from '../emulsions/conflicts/recognise';
import { saltPpm } from '../emulsions/conflicts/salt-load';
import { SALT_SOURCE, USUAL_SALT } from '../emulsions/systems/water-in-oil-salt';
import type { CheckRule } from './check';
import { percentText } from './facts';

/** A w/o emulsion is steadier with a little salt in its drops. */
export const waterInOilSalt: CheckRule = {
  id: 'water-in-oil-salt',
  name: 'W/o: salt in the water phase',
  tells: 'a w/o emulsion has no salt in its water',
  judge({ emulsionType, used, watery }) {
    if (emulsionType !== 'w/o' || watery.length === 0) return [];
    const salts = used.filter((line) => isElectrolyte(line.material));
    const present = salts.reduce((sum, line) => sum + saltPpm(line, 'least'), 0);
    if (present >= USUAL_SALT.leastPpm) return [];
    return [
      {
        ruleId: 'water-in-oil-salt',
        severity: 'note',
        title:
          salts.length === 0
            ? 'A w/o emulsion without salt'
            : `A w/o emulsion with ${percentText(present)} salt`,
        lines: (salts.length > 0 ? salts : watery).map((line) => line.lineId),
        advice: `${percentText(USUAL_SALT.leastPpm)} to ${percentText(USUAL_SALT.mostPpm)} of salt in the water phase, such as magnesium sulfate or sodium chloride, keeps water from moving between the drops.`,
        source: SALT_SOURCE,
      },
    ];
  },
};
