import type { Material } from './material';

/** Said where no hazard is recorded: that nobody wrote one down is no proof that there is none. */
export const NO_HAZARD_RECORDED = 'none recorded: read the safety data sheet';

/** The hazards recorded for a material, in words, for wherever it is weighed or handed out. */
export function hazardWords({ hazards }: Pick<Material, 'hazards'>): string {
  return hazards.length > 0 ? hazards.join(', ') : NO_HAZARD_RECORDED;
}
