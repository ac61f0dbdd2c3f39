import {
  displacementSpecificGravity,
  densityFromMass,
  mixtureDensity,
  pycnometer,
  volumeFromMass,
} from '../../physics/density';
import { densityFill } from '../../physics/density-fill';
import { dilution } from '../../physics/dilution';
import type { Answer } from '../calculated';
import type { Entries, Form } from '../form';
import { one } from '../result';

function fillUp(of: Entries): Answer {
  return {
    results: [
      one('volume', 'Fill up to', dilution(of.number('now'), of.number('volume'), of.number('wanted')), 'mL'),
    ],
  };
}

function fill(of: Entries): Answer {
  return { results: [one('mass', 'Mass', densityFill(of.number('volume'), of.number('density')))] };
}

function ofFormula(of: Entries): Answer {
  const parts = of.rows().map((row, index) => ({
    name: row.words('name') || `part ${index + 1}`,
    mass: row.number('parts'),
    density: row.number('density'),
  }));
  const found = mixtureDensity(parts);
  const densities = parts.filter((part) => part.mass > 0).map((part) => part.density);
  return {
    results: [
      {
        ...one('density', 'Density', found),
        says: `the parts run from ${Math.min(...densities)} to ${Math.max(...densities)} g/mL`,
      },
    ],
  };
}

/** Density, volume and filling. */
export const DENSITY_FORMS = {
  'formula-density': {
    name: 'Density of a formula',
    asks: 'The density that a formula has if its volumes add: a first guess for a fill.',
    fields: [],
    lines: {
      one: 'part',
      caption: 'Parts of the formula with their densities',
      columns: [
        { key: 'name', label: 'Name', words: true },
        { key: 'parts', label: 'Parts', min: 0, hint: 'by mass' },
        { key: 'density', label: 'Density', unit: 'g/mL', min: 0.05, max: 8 },
      ],
      library: { name: 'name', figures: { density: 'density' } },
      share: 'parts',
    },
    compute: ofFormula,
  },
  'density-of-volume': {
    name: 'Density from what a volume weighs',
    asks: 'A measuring cylinder or a filled pack on the balance.',
    fields: [
      { key: 'mass', label: 'Mass', unit: 'g', min: 0 },
      { key: 'volume', label: 'Volume', unit: 'mL', min: 0 },
    ],
    compute: (of) => ({
      results: [one('density', 'Density', densityFromMass(of.number('mass'), of.number('volume')))],
    }),
  },
  'volume-of-mass': {
    name: 'Volume of a mass',
    asks: 'The room that a mass takes up.',
    fields: [
      { key: 'mass', label: 'Mass', unit: 'g', min: 0 },
      { key: 'density', label: 'Density', unit: 'g/mL', min: 0, max: 25 },
    ],
    compute: (of) => ({
      results: [one('volume', 'Volume', volumeFromMass(of.number('mass'), of.number('density')))],
    }),
  },
  pycnometer: {
    name: 'Specific gravity by pycnometer',
    asks: 'Three weighings of one vessel.',
    fields: [
      { key: 'empty', label: 'Empty vessel', unit: 'g', min: 0 },
      { key: 'withWater', label: 'Vessel with water', unit: 'g', min: 0 },
      { key: 'withLiquid', label: 'Vessel with the liquid', unit: 'g', min: 0 },
    ],
    compute: (of) => ({
      results: [
        {
          ...one(
            'gravity',
            'Specific gravity',
            pycnometer(of.number('empty'), of.number('withWater'), of.number('withLiquid')),
          ),
          digits: 4,
        },
      ],
    }),
  },
  plummet: {
    name: 'Specific gravity by plummet',
    asks: 'A body weighed in air, in water and in the liquid.',
    fields: [
      { key: 'inAir', label: 'Plummet in air', unit: 'g', min: 0 },
      { key: 'inWater', label: 'Plummet in water', unit: 'g', min: 0 },
      { key: 'inLiquid', label: 'Plummet in the liquid', unit: 'g', min: 0 },
    ],
    compute: (of) => ({
      results: [
        {
          ...one(
            'gravity',
            'Specific gravity',
            displacementSpecificGravity(of.number('inAir'), of.number('inWater'), of.number('inLiquid')),
          ),
          digits: 4,
        },
      ],
    }),
  },
  dilution: {
    name: 'Dilution',
    asks: 'The volume to fill up to.',
    fields: [
      { key: 'now', label: 'Concentration now', unit: '%', min: 0, hint: 'mass per volume' },
      { key: 'volume', label: 'Volume now', unit: 'mL', min: 0 },
      { key: 'wanted', label: 'Concentration wanted', unit: '%', min: 0 },
    ],
    compute: fillUp,
  },
  fill: {
    name: 'Fill by volume',
    asks: 'The mass that fills a pack.',
    fields: [
      { key: 'volume', label: 'Volume', unit: 'mL', min: 0 },
      { key: 'density', label: 'Density', unit: 'g/mL', min: 0, max: 25, hint: 'at filling temperature' },
    ],
    compute: fill,
  },
} as const satisfies Record<string, Form>;
