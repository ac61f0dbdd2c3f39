import { z } from 'zod';
import { acceleratedAgeing, activationEnergy, q10ShelfLife } from '../physics/ageing';
import { rcf, standingEquivalent } from '../physics/centrifuge';
import { stokesVelocity } from '../physics/creaming';
import { densityFill } from '../physics/density-fill';
import { dilution } from '../physics/dilution';
import { suspensionViscosity } from '../physics/suspension-viscosity';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import { amount } from './amount';
import { entered, type Calculated, type Result } from './calculated';
import { formOf, SCREENING_KEYS, type ScreeningKey } from './screening-forms';

export const screeningRequest = z.object({
  of: z.literal('screening'),
  form: z.enum(SCREENING_KEYS),
  values: z.record(z.string().max(40), amount),
});
export type ScreeningRequest = z.infer<typeof screeningRequest>;

type Values = (key: string) => number;

const MM_PER_DAY = 1000 * 86_400;
const MINUTES_PER_DAY = 1440;

function one(key: string, label: string, from: Worked, unit = from.unit): Result {
  const steps = from.steps.map((step, index) => (index === from.steps.length - 1 ? { ...step, unit } : step));
  return { key, label, worked: { ...from, unit, steps }, digits: { min: 0, max: 3 }, says: '' };
}

/** The same figure in a unit that a reader can picture. */
function inUnit(from: Worked, factor: number, says: string, unit: string): Worked {
  const step = { says, shows: `${show(from.value)} × ${show(factor)}`, result: from.value * factor, unit };
  return worked([...from.steps, step], from.sources, from.cautions);
}

function creaming(of: Values): Result[] {
  const difference = (of('dropletDensity') - of('mediumDensity')) * 1000;
  const speed = stokesVelocity(of('radius') * 1e-6, difference, of('viscosity') / 1000);
  const daily = inUnit(speed, MM_PER_DAY, 'in millimetres a day: m/s × 1000 × 86400', 'mm/day');
  const way = difference < 0 ? 'rises (creams)' : difference > 0 ? 'sinks' : 'stays';
  return [{ ...one('daily', 'A droplet moves', daily), says: way }, one('speed', 'Speed', speed)];
}

function centrifuge(of: Values): Result[] {
  const force = rcf(of('radius'), of('rpm'));
  const minutes = standingEquivalent(of('radius'), of('rpm'), of('minutes'));
  const days = inUnit(minutes, 1 / MINUTES_PER_DAY, 'in days: minutes / 1440', 'days');
  return [
    { ...one('force', 'Force', force), digits: 0 },
    { ...one('standing', 'Stands for', days), digits: 1, says: 'of standing, by creaming distance alone' },
  ];
}

function accelerated(of: Values): Result[] {
  const weeks = acceleratedAgeing(of('real'), of('test'), of('q10'), of('weeks'));
  const results = [{ ...one('weeks', 'Test time', weeks, 'weeks'), digits: 1 }];
  if (of('real') === of('test')) return results;
  const energy = activationEnergy(of('q10'), of('real'), of('test'));
  return [...results, { ...one('energy', 'Activation energy assumed', energy), digits: 0 }];
}

const COMPUTE: Record<ScreeningKey, (of: Values) => Result[]> = {
  creaming,
  centrifuge,
  accelerated,
  'shelf-life': (of) => [
    {
      ...one('weeks', 'Time', q10ShelfLife(of('q10'), of('known'), of('weeks'), of('other')), 'weeks'),
      digits: 1,
    },
  ],
  suspension: (of) => [
    one(
      'viscosity',
      'Viscosity',
      suspensionViscosity(of('phi'), of('phiMax'), of('intrinsic'), of('medium')),
      'mPa·s',
    ),
  ],
  dilution: (of) => [one('volume', 'Fill up to', dilution(of('now'), of('volume'), of('wanted')), 'mL')],
  fill: (of) => [one('mass', 'Mass', densityFill(of('volume'), of('density')))],
};

/** One of the small calculations. @throws Problem `invalid-input` */
export function calculateScreening({ form, values }: ScreeningRequest): Calculated {
  const { name, fields } = formOf(form);
  const labels = new Map(fields.map((field) => [field.key, field.label]));
  const of: Values = (key) => entered(values[key] ?? null, labels.get(key) ?? key, key);
  return {
    title: name,
    results: COMPUTE[form](of),
    given: fields.map(({ key, label, unit }) => ({ label, value: of(key), unit })),
    withheld: [],
    notes: [],
  };
}
