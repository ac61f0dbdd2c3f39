import { COMMON_PRACTICE } from '../../../working/working';
import { membersOf, NEUTRAL, type SystemRule } from '../system';

export const fewerMaterials: SystemRule = {
  id: 'fewer-materials',
  name: 'Fewer materials',
  says: 'Every extra material must be bought, tested and labelled.',
  weight: 0.5,
  source: COMMON_PRACTICE,
  judge(system) {
    const count = membersOf(system).length;
    if (count <= 2) return NEUTRAL;
    return {
      verdict: 'against',
      strength: Math.min(1, (count - 2) / 2),
      why: `It takes ${count} materials.`,
    };
  },
};
