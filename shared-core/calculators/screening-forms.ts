/** One figure that a small form asks for. */
export interface FormField {
  key: string;
  label: string;
  unit: string;
  min?: number;
  max?: number;
  hint?: string;
}

export interface ScreeningForm {
  name: string;
  /** What it answers, in a sentence. */
  asks: string;
  fields: readonly FormField[];
}

const HOTTEST = 200;
const celsius = (key: string, label: string, hint?: string): FormField => ({
  key,
  label,
  unit: '°C',
  min: -80,
  max: HOTTEST,
  hint,
});
const Q10: FormField = {
  key: 'q10',
  label: 'Q10',
  unit: '',
  min: 0.1,
  max: 20,
  hint: '2 is the usual assumption',
};

/** The small calculations on separation, ageing and filling, in the order shown. */
export const SCREENING_FORMS = {
  creaming: {
    name: 'Creaming speed (Stokes)',
    asks: 'How fast a lone droplet rises or sinks.',
    fields: [
      { key: 'radius', label: 'Droplet radius', unit: 'µm', min: 0, hint: 'half the diameter' },
      { key: 'dropletDensity', label: 'Density of the droplet', unit: 'g/mL', min: 0, max: 25 },
      { key: 'mediumDensity', label: 'Density of the medium', unit: 'g/mL', min: 0, max: 25 },
      { key: 'viscosity', label: 'Viscosity of the medium', unit: 'mPa·s', min: 0 },
    ],
  },
  centrifuge: {
    name: 'Centrifuge',
    asks: 'The force of a spin, and the standing it stands for by creaming distance.',
    fields: [
      { key: 'radius', label: 'Rotor radius', unit: 'cm', min: 0, hint: 'at the sample' },
      { key: 'rpm', label: 'Speed', unit: 'rpm', min: 0 },
      { key: 'minutes', label: 'Spin time', unit: 'min', min: 0 },
    ],
  },
  accelerated: {
    name: 'Accelerated ageing (Q10)',
    asks: 'The test time that stands for a time on the shelf.',
    fields: [
      celsius('real', 'Shelf temperature'),
      celsius('test', 'Test temperature'),
      Q10,
      { key: 'weeks', label: 'Time on the shelf', unit: 'weeks', min: 0 },
    ],
  },
  'shelf-life': {
    name: 'Shelf life at another temperature',
    asks: 'The time to the same change at another temperature.',
    fields: [
      celsius('known', 'Known temperature'),
      { key: 'weeks', label: 'Known time', unit: 'weeks', min: 0 },
      celsius('other', 'Other temperature'),
      Q10,
    ],
  },
  suspension: {
    name: 'Viscosity of a suspension (Krieger–Dougherty)',
    asks: 'How droplets or particles thicken the medium.',
    fields: [
      { key: 'phi', label: 'Volume fraction', unit: '', min: 0, max: 1, hint: '30 % is 0.3' },
      { key: 'phiMax', label: 'Closest packing', unit: '', min: 0, max: 1, hint: '0.64 for random spheres' },
      { key: 'intrinsic', label: 'Intrinsic viscosity', unit: '', min: 0, hint: '2.5 for spheres' },
      { key: 'medium', label: 'Viscosity of the medium', unit: 'mPa·s', min: 0 },
    ],
  },
  dilution: {
    name: 'Dilution',
    asks: 'The volume to fill up to.',
    fields: [
      { key: 'now', label: 'Concentration now', unit: '%', min: 0, hint: 'mass per volume' },
      { key: 'volume', label: 'Volume now', unit: 'mL', min: 0 },
      { key: 'wanted', label: 'Concentration wanted', unit: '%', min: 0 },
    ],
  },
  fill: {
    name: 'Fill by volume',
    asks: 'The mass that fills a pack.',
    fields: [
      { key: 'volume', label: 'Volume', unit: 'mL', min: 0 },
      { key: 'density', label: 'Density', unit: 'g/mL', min: 0, max: 25, hint: 'at filling temperature' },
    ],
  },
} as const satisfies Record<string, ScreeningForm>;
export type ScreeningKey = keyof typeof SCREENING_FORMS;
export const SCREENING_KEYS = Object.keys(SCREENING_FORMS) as ScreeningKey[];

/** The fields of a form, whichever it is. */
export function formOf(key: ScreeningKey): ScreeningForm {
  return SCREENING_FORMS[key];
}
