import { cubeRootViscosity, logMixViscosity, refutasIndex, refutasViscosity } from '../../rheology/mixing';
import { PUBLISHED_VISCOSITIES } from '../../rheology/published-viscosities';
import { glycerolViscosity, viscosityAt } from '../../rheology/temperature';
import { badInput } from '../../working/inputs';
import { show } from '../../working/show';
import { worked } from '../../working/one-step';
import type { Worked } from '../../working/working';
import type { Answer, Result } from '../calculated';
import type { Entries, Form } from '../form';
import { one } from '../result';

interface Oil {
  fraction: number;
  viscosity: number;
  density: number | null;
}

function oilsOf(of: Entries): Oil[] {
  const rows = of.rows();
  const whole = rows.reduce((sum, row) => sum + row.number('parts'), 0);
  if (!(whole > 0)) throw badInput('There are no parts yet.', 'Enter how much there is of each oil.', 'rows');
  return rows.map((row) => ({
    fraction: row.number('parts') / whole,
    viscosity: row.number('viscosity'),
    density: row.optional('density'),
  }));
}

/** Refutas' rule needs kinematic viscosities, so every density. */
function byRefutas(oils: readonly Oil[]): Worked | null {
  const known = oils.flatMap(({ density, ...oil }) => (density === null ? [] : [{ ...oil, density }]));
  if (known.length < oils.length) return null;
  const density = 1 / known.reduce((sum, oil) => sum + oil.fraction / oil.density, 0);
  const found = refutasViscosity(
    known.map((oil) => ({ fraction: oil.fraction, viscosity: oil.viscosity / oil.density })),
  );
  const step = {
    says: 'viscosity: kinematic viscosity × density of the mix, its volumes added',
    shows: `${show(found.value)} × ${show(density)}`,
    result: found.value * density,
    unit: 'mPa·s',
  };
  return worked([...found.steps, step], found.sources, found.cautions);
}

function oilMix(of: Entries): Answer {
  const oils = oilsOf(of);
  const refutas = byRefutas(oils);
  const results: Result[] = [
    one('log', 'By logarithms (Arrhenius)', logMixViscosity(oils, of.number('interaction'))),
    one('cube', 'By cube roots (Kendall and Monroe)', cubeRootViscosity(oils)),
    ...(refutas ? [one('refutas', 'By Refutas’ index', refutas)] : []),
  ].map((result) => ({ ...result, digits: 1 }));
  const values = results.map((result) => result.worked.value);
  return {
    results,
    notes: [
      `The rules leave ${Math.min(...values).toFixed(1)} to ${Math.max(...values).toFixed(1)} mPa·s: take that as the answer.`,
      'All viscosities at one temperature, of liquids that flow freely (no waxes, gels or silicone gums).',
      ...(refutas ? [] : ['With every density Refutas’ rule is computed too.']),
    ],
  };
}

const MPAS = 'mPa·s';

/** Viscosity of oils and of glycerin in water. */
export const VISCOSITY_FORMS = {
  'oil-viscosity': {
    name: 'Viscosity of an oil mixture',
    asks: 'What oils of known viscosity make together, by three rules: their spread says how far to trust it.',
    fields: [
      {
        key: 'interaction',
        label: 'Interaction',
        min: -20,
        max: 20,
        start: 0,
        hint: 'of Grunberg and Nissan; 0 for alike oils',
      },
    ],
    lines: {
      one: 'oil',
      caption: 'Oils with their viscosities',
      columns: [
        { key: 'name', label: 'Name', words: true },
        { key: 'parts', label: 'Parts', min: 0, hint: 'by mass' },
        { key: 'viscosity', label: 'Viscosity', unit: MPAS, min: 0 },
        { key: 'density', label: 'Density', unit: 'g/mL', min: 0.05, max: 8, optional: true },
      ],
      library: { name: 'name', figures: { density: 'density' } },
      presetLabel: 'Add a published viscosity',
      presets: PUBLISHED_VISCOSITIES.map(({ name, celsius, mPas, source }) => ({
        label: `${name}, ${mPas} mPa·s at ${celsius} °C (${source.text}; not verified)`,
        row: { name: `${name} at ${celsius} °C`, viscosity: mPas },
      })),
    },
    compute: oilMix,
  },
  'viscosity-at': {
    name: 'Viscosity at another temperature',
    asks: 'From the viscosity of an oil at two temperatures (Andrade).',
    fields: [
      { key: 't1', label: 'First temperature', unit: '°C', min: -80, max: 300 },
      { key: 'v1', label: 'First viscosity', unit: MPAS, min: 0 },
      { key: 't2', label: 'Second temperature', unit: '°C', min: -80, max: 300 },
      { key: 'v2', label: 'Second viscosity', unit: MPAS, min: 0 },
      { key: 't', label: 'Temperature wanted', unit: '°C', min: -80, max: 300 },
    ],
    compute: (of) => {
      const found = viscosityAt(
        { temperature: of.number('t1'), viscosity: of.number('v1') },
        { temperature: of.number('t2'), viscosity: of.number('v2') },
        of.number('t'),
      );
      const says = `${show(found.value * 0.95)} to ${show(found.value * 1.05)} within 5 %`;
      return { results: [{ ...one('viscosity', 'Viscosity', found), says }] };
    },
  },
  'glycerol-viscosity': {
    name: 'Glycerin in water',
    asks: 'The viscosity of glycerin and water at a temperature (Cheng).',
    fields: [
      {
        key: 'percent',
        label: 'Glycerol',
        unit: '%',
        min: 0,
        max: 100,
        hint: 'by mass, its own water left out',
      },
      { key: 'temperature', label: 'Temperature', unit: '°C', min: 0, max: 100 },
    ],
    compute: (of) => ({
      results: [
        one('viscosity', 'Viscosity', glycerolViscosity(of.number('percent'), of.number('temperature'))),
      ],
    }),
  },
  'refutas-index': {
    name: 'Refutas index',
    asks: 'The blending index of one kinematic viscosity: indices mix by mass.',
    fields: [{ key: 'viscosity', label: 'Kinematic viscosity', unit: 'mm²/s', min: 0 }],
    compute: (of) => ({
      results: [{ ...one('index', 'Index', refutasIndex(of.number('viscosity'))), digits: 2 }],
    }),
  },
} as const satisfies Record<string, Form>;
