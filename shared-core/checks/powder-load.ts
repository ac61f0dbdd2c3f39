import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';
import { namesOf, percentText, sumPpm } from './facts';

/** More insoluble powder than this, ppm of the formula, thickens, drags and loads the emulsifier. Common practice. */
const LOAD_PPM = 100_000;

/** Powders take up oil and emulsifier at their surface. */
export const powderLoad: CheckRule = {
  id: 'powder-load',
  name: 'Powders within what an emulsion carries',
  tells: 'there is more powder than an emulsion usually carries',
  threshold: { label: 'Warns above this share of insoluble powder', usual: LOAD_PPM, max: 800_000 },
  judge({ isEmulsion, used }, threshold) {
    const powders = used.filter(
      ({ material }) => material.form === 'powder' && material.solubleIn.includes('insoluble'),
    );
    const load = sumPpm(powders);
    if (!isEmulsion || load <= threshold) return [];
    return [
      {
        ruleId: 'powder-load',
        severity: 'note',
        title: `${percentText(load)} of insoluble powder: ${namesOf(powders)}`,
        lines: powders.map((line) => line.lineId),
        advice:
          'Powder takes up oil and emulsifier at its surface and thickens: wet it out in part of the oil with a dispersant, raise the emulsifier, and look for grit and drag.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
