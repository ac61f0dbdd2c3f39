import type { Figure } from '../materials/figure';
import { SOLID_FORMS } from '../materials/vocabulary';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule, Finding } from './check';
import type { LineFacts } from './facts';

/** A phase without a temperature is taken to be at this. °C */
const ROOM = 25;

/** The temperature at which all of it is molten: the upper end of a range. °C */
function meltsAt(figure: Figure | undefined): number | null {
  return figure?.high ?? figure?.value ?? figure?.low ?? null;
}

/** A solid that has to melt (wax, butter, fatty alcohol), not one that dissolves or is dispersed. */
function mustMelt({ material }: LineFacts): boolean {
  if (material.coldProcessable === true) return false;
  const solid =
    material.consistency === 'waxy' || (material.form !== null && SOLID_FORMS.includes(material.form));
  const dissolvesInWater = material.solubleIn.includes('water') || material.solubleIn.includes('hot water');
  const oily = material.phaseOfUse === 'oil' || material.consistency === 'waxy';
  return solid && oily && !dissolvesInWater && !material.solubleIn.includes('insoluble');
}

function judgeLine(line: LineFacts): Finding[] {
  const melting = meltsAt(line.material.figures.meltingPoint);
  if (melting === null || !mustMelt(line)) return [];
  const reached = line.phaseTemperature ?? ROOM;
  if (reached >= melting) return [];
  const phase = `phase ${line.phaseLetter} ${line.phaseTemperature === null ? 'has no temperature' : `is at ${reached} °C`}`;
  return [
    {
      ruleId: 'unmelted',
      severity: 'warn',
      title: `${line.material.tradeName} melts at ${melting} °C; ${phase}`,
      lines: [line.lineId],
      advice:
        'Heat the phase above its melting point, or move it to a heated phase. Hot oil and water burn: use a water bath, goggles and gloves.',
      source: COMMON_PRACTICE,
    },
  ];
}

/** A wax in a phase that never reaches its melting point stays a lump. */
export const unmelted: CheckRule = {
  id: 'unmelted',
  name: 'Waxes melt',
  tells: 'a wax is not heated above its melting point',
  judge: ({ lines }) => lines.filter((line) => line.ppm > 0).flatMap(judgeLine),
};
