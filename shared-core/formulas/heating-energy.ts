import { phaseTemperature } from '../checks/facts';
import { bringsWater } from '../emulsions/conflicts/recognise';
import { dosedLines, type FindMaterial } from '../limits/in-formula';
import { percentFromPpm } from '../quantities/share';
import { show } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { phaseLetter, type FormulaContent } from './formula';
import { formulaShares } from './shares';

/** Where heating starts, °C. */
const ROOM_C = 20;
/** Specific heat, kJ/(kg·K): of water at 25 °C (CRC Handbook, from memory), and of oils and waxes (common practice). */
const WATER_KJ = 4.18;
const OIL_KJ = 2;
const KJ_PER_KWH = 3600;

function heatStep(content: FormulaContent, at: number, find: FindMaterial): WorkingStep | null {
  const phase = content.phases[at];
  const target = phase && phaseTemperature(content, phase);
  if (!phase || target === null || target === undefined || target <= ROOM_C) return null;
  const { byLine } = formulaShares(content);
  const lines = dosedLines({ phases: [phase] }, find).map((line) => ({
    kg: percentFromPpm(Math.max(0, byLine.get(line.lineId) ?? 0)) / 100,
    watery: bringsWater(line.material),
  }));
  const mass = (watery: boolean): number =>
    lines.filter((line) => line.watery === watery).reduce((sum, { kg }) => sum + kg, 0);
  const [water, rest] = [mass(true), mass(false)];
  return {
    says: `phase ${phaseLetter(at)} from ${ROOM_C} to ${target} °C, in a kilogram of product`,
    shows: `(${show(water)} × ${WATER_KJ} + ${show(rest)} × ${OIL_KJ}) × (${target} − ${ROOM_C})`,
    result: (water * WATER_KJ + rest * OIL_KJ) * (target - ROOM_C),
    unit: 'kJ/kg',
  };
}

/**
 * Energy to heat the phases of a formula to their temperatures, kWh in a kilogram of product; without vessel, losses,
 * stirring and cooling. Null where no phase is heated.
 */
export function heatingEnergy(content: FormulaContent, find: FindMaterial): Worked | null {
  const steps = content.phases.flatMap((_, at) => heatStep(content, at, find) ?? []);
  if (steps.length === 0) return null;
  const heat = steps.reduce((sum, { result }) => sum + result, 0);
  return {
    value: heat / KJ_PER_KWH,
    unit: 'kWh/kg',
    steps: [
      ...steps,
      {
        says: 'sum of the phases, in kilowatt-hours',
        shows: `(${steps.map(({ result }) => show(result)).join(' + ')}) / ${KJ_PER_KWH}`,
        result: heat / KJ_PER_KWH,
        unit: 'kWh/kg',
      },
    ],
    sources: [
      { text: 'CRC Handbook of Chemistry and Physics, specific heat of water', basis: 'memory' },
      {
        text: 'specific heat of oils about 2 kJ/(kg·K): common practice, no source',
        basis: 'common-practice',
      },
    ],
    cautions: [
      'What is not watery counts as oil. Vessel, losses, stirring and cooling come on top: often more than the heat itself.',
    ],
  };
}
