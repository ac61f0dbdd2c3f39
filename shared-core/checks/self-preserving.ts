import { figureValue } from '../materials/figure';
import { waterActivity } from '../solutions/water-activity';
import { fold } from '../quantities/fold';
import { WHOLE_PPM } from '../quantities/share';
import type { Source } from '../working/working';
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

/** Solutes that lower the activity of water: molar mass, g/mol, and Norrish's constant; 0 is Raoult's law. */
const HUMECTANTS: Readonly<Record<string, { molarMass: number; k: number }>> = {
  glycerin: { molarMass: 92.09, k: 1.16 },
  sorbitol: { molarMass: 182.17, k: 1.65 },
  'propylene glycol': { molarMass: 76.09, k: 1 },
  propanediol: { molarMass: 76.09, k: 0 },
  'butylene glycol': { molarMass: 90.12, k: 0 },
  'sodium chloride': { molarMass: 29.22, k: 0 },
  urea: { molarMass: 60.06, k: 0 },
};

/** What of a substance all lines hold, g in 100 g, at the lower end of the suppliers' ranges. */
function held(lines: readonly LineFacts[], is: (inci: string) => boolean): number {
  return lines.reduce((sum, { material, ppm }) => {
    const share = material.composition
      .filter((part) => is(part.inci))
      .reduce((a, part) => a + part.lowPpm, 0);
    return sum + ((ppm / 10_000) * share) / WHOLE_PPM;
  }, 0);
}

const isEthanol = (inci: string): boolean => /^(alcohol( denat\.?)?|ethanol)$/.test(fold(inci).trim());

/**
 * Why a formula with water may need no preservative: enough ethanol beside the water, or humectants that leave the water
 * too little activity (each solute by Norrish or Raoult, together by Ross's product); null where neither holds.
 */
export function selfPreserving(used: readonly LineFacts[]): string | null {
  const water = held(used, isWaterName);
  const ethanol = held(used, isEthanol) / ETHANOL_DENSITY;
  const share = ethanol / (ethanol + water);
  if (share > LEAST_ETHANOL)
    return `Ethanol makes ${(100 * share).toFixed(0)} % of the volume of water and ethanol, above 20 %.`;
  if (water <= 0) return null;
  const activity = Object.entries(HUMECTANTS).reduce((product, [inci, { molarMass, k }]) => {
    const grams = held(used, (name) => fold(name).trim() === inci);
    const molality = (1000 * grams) / molarMass / water;
    return grams > 0 ? product * waterActivity({ molality, k }).value : product;
  }, 1);
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
  const active = (figureValue(material.figures.activePercent) ?? 100) / 100;
  return (strong ? 10 : 1_000) / active;
}
