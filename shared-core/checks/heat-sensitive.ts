import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule, Finding } from './check';
import type { LineFacts } from './facts';

/** What goes in at cool-down is added below about this. Common practice, no source. °C */
const COOL_DOWN = 45;

function judgeLine({ lineId, material, phaseLetter, phaseTemperature }: LineFacts): Finding[] {
  if (phaseTemperature === null) return [];
  const figure = material.figures.maxTemperature;
  // Of a range the lower end: what stands 60 to 80 °C is safe at 60.
  const highest = figure ? (figure.value ?? figure.low ?? figure.high) : null;
  if (highest !== null && phaseTemperature > highest) {
    return [
      {
        ruleId: 'heat-sensitive',
        severity: 'warn',
        title: `${material.tradeName} withstands ${highest} °C at most; phase ${phaseLetter} reaches ${phaseTemperature} °C`,
        lines: [lineId],
        advice: 'Move it to a cooler phase, or add it while cooling.',
        source: {
          text: figure?.source || 'highest processing temperature as recorded',
          basis: 'library',
        },
      },
    ];
  }
  if (highest === null && material.phaseOfUse === 'cool-down' && phaseTemperature > COOL_DOWN) {
    return [
      {
        ruleId: 'heat-sensitive',
        severity: 'warn',
        title: `${material.tradeName} belongs in the cool-down; phase ${phaseLetter} reaches ${phaseTemperature} °C`,
        lines: [lineId],
        advice: `Add it below about ${COOL_DOWN} °C, or record the highest temperature it withstands.`,
        source: COMMON_PRACTICE,
      },
    ];
  }
  return [];
}

/** Nothing is heated beyond what it stands. */
export const heatSensitive: CheckRule = {
  id: 'heat-sensitive',
  name: 'Nothing heated above its highest temperature',
  tells: 'a material is heated above its highest temperature',
  judge: ({ lines }) => lines.flatMap(judgeLine),
};
