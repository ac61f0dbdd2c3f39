import { figureValue } from '../materials/figure';
import { oneStep } from '../working/one-step';
import { show } from '../working/show';
import type { Source, Worked } from '../working/working';
import type { Dose } from './conflicts/charge-bearers';
import { isOil } from './systems/oil-phase';

/** The share of the volume that equal spheres fill at the closest: π / √18. */
export const CLOSE_PACKING = Math.PI / Math.sqrt(18);

const OSTWALD: Source = {
  text: 'Ostwald W., Beiträge zur Kenntnis der Emulsionen, Kolloid-Z. 6, 103-109 (1910); closest packing of equal spheres: π / √18',
  basis: 'memory',
};

/** Taken where a material has no density, g/mL: that of most oils, and of water. Common practice, no source. */
const USUAL_DENSITY = { oil: 0.9, water: 1 };

/** Whether a line goes with the oil: an oil, or what is usually put into the oil phase or dissolves in oil alone. */
function isOily({ material }: Dose): boolean {
  if (isOil(material)) return true;
  if (material.phaseOfUse === 'oil') return true;
  if (material.phaseOfUse === 'water') return false;
  const dissolves = (what: string): boolean => (material.solubleIn as readonly string[]).includes(what);
  return (dissolves('oil') || dissolves('hot oil')) && !dissolves('water');
}

export interface InternalPhase {
  inner: 'oil' | 'water';
  /** % of the volume. */
  worked: Worked;
  /** The lines of the inner phase, by id. */
  lines: string[];
}

/**
 * How much of the volume the inner phase of an emulsion fills, from the masses and recorded densities of its lines;
 * null where one of the phases is missing. Volumes are taken to add up.
 *
 * @param doses the formula's lines above zero
 * @param waterPpm water that no line tells of, ppm of the formula
 */
export function internalPhase(
  doses: readonly Dose[],
  type: 'o/w' | 'w/o' | 'cationic o/w',
  waterPpm = 0,
): InternalPhase | null {
  const inner = type === 'w/o' ? 'water' : 'oil';
  let assumed = 0;
  const volumes = { oil: 0, water: waterPpm / 10_000 / USUAL_DENSITY.water };
  for (const dose of doses) {
    const side = isOily(dose) ? 'oil' : 'water';
    const density = figureValue(dose.material.figures.density);
    if (density === null) assumed += dose.ppm;
    volumes[side] += dose.ppm / 10_000 / (density ?? USUAL_DENSITY[side]);
  }
  if (volumes.oil === 0 || volumes.water === 0) return null;
  const whole = volumes.oil + volumes.water;
  const total = doses.reduce((sum, dose) => sum + dose.ppm, waterPpm);
  const step = {
    says: `volume of the ${inner} phase in that of both, from mass and density of every line`,
    shows: `100 × ${show(volumes[inner])} / (${show(volumes.oil)} + ${show(volumes.water)})`,
    result: (100 * volumes[inner]) / whole,
    unit: '% by volume',
  };
  const cautions =
    assumed > 0
      ? [
          `For ${show(Number(((100 * assumed) / total).toPrecision(2)))} % of the mass no density is recorded: ${show(USUAL_DENSITY.oil)} g/mL is taken for oils, ${show(USUAL_DENSITY.water)} for the rest.`,
        ]
      : [];
  return {
    inner,
    worked: oneStep(step, [OSTWALD], cautions),
    lines: doses.filter((dose) => (isOily(dose) ? 'oil' : 'water') === inner).map((dose) => dose.lineId),
  };
}
