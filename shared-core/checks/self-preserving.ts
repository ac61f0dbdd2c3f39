import { figureValue } from '../materials/figure';
import { activityOfWater, gramsHeld } from '../solutions/humectants';
import { fold } from '../quantities/fold';
import type { Source } from '../working/working';
import { plainName } from '../substances/names';
import { isWaterName } from '../emulsions/conflicts/recognise';
import type { LineFacts } from './facts';

/** From here on, by volume of water and ethanol, ethanol keeps microbes from growing. */
const LEAST_ETHANOL = 0.2;
/** Below this water activity next to nothing grows. */
const LOWEST_ACTIVITY = 0.7;
const ETHANOL_DENSITY = 0.789;

export const LOW_RISK: Source = {
  text: 'ISO 29621, Cosmetics, Microbiology, Guidelines for the risk assessment and identification of microbiologically low-risk products (ethanol above 20 % by volume; low water activity)',
  basis: 'memory',
};

const isEthanol = (inci: string): boolean => /^(alcohol( denat\.?)?|ethanol)$/.test(plainName(inci));

/** Water that lines bring, g in 100 g, at the upper end of the suppliers' ranges: it is what microbes need. */
export const waterOf = (used: readonly LineFacts[]): number => gramsHeld(used, isWaterName, 'most');

/** The part of ethanol in the volume of water and ethanol, at the least that suppliers' ranges leave; 0 to 1. */
export function ethanolByVolume(used: readonly LineFacts[]): number {
  const ethanol = gramsHeld(used, isEthanol, 'least') / ETHANOL_DENSITY;
  const whole = ethanol + waterOf(used);
  return whole === 0 ? 0 : ethanol / whole;
}

/**
 * Why a formula with water may need no preservative: enough ethanol beside the water, or humectants that leave the water
 * too little activity; null where neither holds.
 */
export function selfPreserving(used: readonly LineFacts[]): string | null {
  const share = ethanolByVolume(used);
  if (share > LEAST_ETHANOL)
    return `Ethanol makes ${(100 * share).toFixed(0)} % of the volume of water and ethanol, above 20 %.`;
  const activity = activityOfWater(used, waterOf(used))?.value ?? 1;
  return activity < LOWEST_ACTIVITY
    ? `Its humectants leave the water an activity of about ${activity.toFixed(2)}, below ${LOWEST_ACTIVITY}.`
    : null;
}

/** The least dose at which a preservative counts as one, ppm: its recorded lowest use, else by common practice. */
export function leastDosePpm({ material }: LineFacts): number {
  const recorded = material.usage?.minPpm;
  if (recorded) return recorded;
  const strong = material.composition.some((part) =>
    /isothiazolinone|iodopropynyl|chlorhexidine|biguanide|bronopol|nitropropane|hexamidine/.test(
      fold(part.inci),
    ),
  );
  // Isothiazolinones and their like work at some ppm; the milder ones hardly below a tenth of a per cent.
  const figure = material.figures.activePercent;
  // Of a range the lower end: it takes the most to reach the dose.
  const active = (figure?.value ?? figure?.low ?? figureValue(figure) ?? 100) / 100;
  return (strong ? 10 : 1_000) / active;
}
