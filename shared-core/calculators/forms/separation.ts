import { acceleratedAgeing, activationEnergy, q10ShelfLife } from '../../physics/ageing';
import { rcf, standingEquivalent } from '../../physics/centrifuge';
import { stokesVelocity } from '../../physics/creaming';
import { suspensionViscosity } from '../../physics/suspension-viscosity';
import type { Answer } from '../calculated';
import type { Entries, Form, FormField } from '../form';
import { inUnit, one } from '../result';

const MM_PER_DAY = 1000 * 86_400;
const MINUTES_PER_DAY = 1440;

function creaming(of: Entries): Answer {
  const difference = (of.number('dropletDensity') - of.number('mediumDensity')) * 1000;
  const speed = stokesVelocity(
    of.number('radius') * 1e-6,
    difference,
    of.number('viscosity') / 1000,
    of.number('mediumDensity') * 1000,
  );
  const daily = inUnit(speed, MM_PER_DAY, 'in millimetres a day: m/s × 1000 × 86400', 'mm/day');
  const way = difference < 0 ? 'rises (creams)' : difference > 0 ? 'sinks' : 'stays';
  return {
    results: [{ ...one('daily', 'A droplet moves', daily), says: way }, one('speed', 'Speed', speed)],
  };
}

function centrifuge(of: Entries): Answer {
  const force = rcf(of.number('radius'), of.number('rpm'));
  const minutes = standingEquivalent(of.number('radius'), of.number('rpm'), of.number('minutes'));
  const days = inUnit(minutes, 1 / MINUTES_PER_DAY, 'in days: minutes / 1440', 'days');
  return {
    results: [
      { ...one('force', 'Force', force), digits: 0 },
      { ...one('standing', 'Equals', days), digits: 1, says: 'of standing, by creaming distance alone' },
    ],
  };
}

function accelerated(of: Entries): Answer {
  const weeks = acceleratedAgeing(of.number('real'), of.number('test'), of.number('q10'), of.number('weeks'));
  const results = [{ ...one('weeks', 'Test time', weeks, 'weeks'), digits: 1 }];
  if (of.number('real') === of.number('test')) return { results };
  const energy = activationEnergy(of.number('q10'), of.number('real'), of.number('test'));
  return { results: [...results, { ...one('energy', 'Activation energy assumed', energy), digits: 0 }] };
}

function shelfLife(of: Entries): Answer {
  const weeks = q10ShelfLife(of.number('q10'), of.number('known'), of.number('weeks'), of.number('other'));
  return { results: [{ ...one('weeks', 'Time', weeks, 'weeks'), digits: 1 }] };
}

function suspension(of: Entries): Answer {
  const viscosity = suspensionViscosity(
    of.number('phi'),
    of.number('phiMax'),
    of.number('intrinsic'),
    of.number('medium'),
  );
  return { results: [one('viscosity', 'Viscosity', viscosity, 'mPa·s')] };
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
  term: 'q10',
  label: 'Q10',
  min: 0.1,
  max: 20,
  hint: '2 is the usual assumption',
};

/** Separation and ageing: small calculations that screen, and do not prove. */
export const SEPARATION_FORMS = {
  creaming: {
    name: 'Creaming speed (Stokes)',
    asks: 'How fast a lone droplet rises or sinks.',
    fields: [
      { key: 'radius', label: 'Droplet radius', unit: 'µm', min: 0, hint: 'half the diameter' },
      { key: 'dropletDensity', label: 'Density of the droplet', unit: 'g/mL', min: 0, max: 25 },
      { key: 'mediumDensity', label: 'Density of the medium', unit: 'g/mL', min: 0, max: 25 },
      { key: 'viscosity', label: 'Viscosity of the medium', unit: 'mPa·s', min: 0 },
    ],
    compute: creaming,
  },
  centrifuge: {
    name: 'Centrifuge',
    asks: 'The force of a spin, and the time of standing with the same creaming distance.',
    fields: [
      { key: 'radius', label: 'Rotor radius', unit: 'cm', min: 0, hint: 'at the sample' },
      { key: 'rpm', label: 'Speed', unit: 'rpm', min: 0 },
      { key: 'minutes', label: 'Spin time', unit: 'min', min: 0 },
    ],
    compute: centrifuge,
  },
  accelerated: {
    name: 'Accelerated ageing (Q10)',
    asks: 'The test time that equals a time on the shelf.',
    fields: [
      celsius('real', 'Shelf temperature'),
      celsius('test', 'Test temperature'),
      Q10,
      { key: 'weeks', label: 'Time on the shelf', unit: 'weeks', min: 0 },
    ],
    compute: accelerated,
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
    compute: shelfLife,
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
    compute: suspension,
  },
} as const satisfies Record<string, Form>;
