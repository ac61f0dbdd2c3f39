import { Problem } from '../../problems/problem';
import { bufferCapacity, bufferPh, bufferRatio } from '../../solutions/buffer';
import { ionicStrength } from '../../solutions/ionic-strength';
import type { Protolyte, Solution } from '../../solutions/solution';
import { solutionPh } from '../../solutions/solution-ph';
import { waterActivity, waterActivityOfPercent } from '../../solutions/water-activity';
import { badInput } from '../../working/inputs';
import type { Answer } from '../calculated';
import type { Entries, Form, FormField, FormRow, Preset } from '../form';
import { one } from '../result';

const MOL = 'mol/L';
const ACTIVITIES = { Davies: 'by Davies', none: 'left out (ideal)' } as const;
const TEMPERATURE: FormField = {
  key: 'temperature',
  label: 'Temperature',
  unit: '°C',
  min: 0,
  max: 100,
  start: 25,
};
const WITH: FormField = { key: 'activities', label: 'Activities', choices: ACTIVITIES, start: 'Davies' };

/** Constants at 25 °C; CRC Handbook, from memory. */
const PKAS: readonly [name: string, pKas: readonly number[], kind: string][] = [
  ['acetic acid', [4.756], 'acid'],
  ['citric acid', [3.128, 4.761, 6.396], 'acid'],
  ['phosphoric acid', [2.148, 7.198, 12.35], 'acid'],
  ['lactic acid', [3.86], 'acid'],
  ['boric acid', [9.237], 'acid'],
  ['carbonic acid', [6.352, 10.329], 'acid'],
  ['triethanolamine', [7.76], 'base'],
  ['tromethamine', [8.07], 'base'],
];
const PRESETS: readonly Preset[] = PKAS.map(([name, pKas, kind]) => ({
  label: `${name}, pKa ${pKas.join(', ')} (CRC Handbook; not verified)`,
  row: Object.fromEntries([
    ['name', name],
    ['kind', kind],
    ...pKas.map((pKa, index): [string, number] => [`pKa${index + 1}`, pKa]),
  ]) as FormRow,
}));

function protolyteOf(row: Entries, index: number): Protolyte {
  row.number('pKa1');
  const held = ['pKa1', 'pKa2', 'pKa3'].map((key) => row.optional(key));
  const last = held.findLastIndex((pKa) => pKa !== null);
  const pKas = held.slice(0, last + 1);
  if (pKas.includes(null))
    throw badInput(
      'A pKa between two others is empty.',
      'Fill the pKas from the left.',
      `rows.${index}.pKa2`,
    );
  return {
    name: row.words('name') || `acid ${index + 1}`,
    pKas: pKas.filter((pKa) => pKa !== null),
    charge: row.choice('kind') === 'base' ? 1 : 0,
    concentration: row.number('concentration'),
  };
}

/** The pH with activities where they were left out, and the other way: how much hangs on them. */
function otherwise(solution: Solution): string {
  const ideal = solution.activities === 'none';
  try {
    const { pH } = solutionPh({ ...solution, activities: ideal ? 'Davies' : 'none' });
    return `${pH.value.toFixed(2)} ${ideal ? 'with' : 'without'} activities`;
  } catch (refused) {
    if (!(refused instanceof Problem)) throw refused;
    // Too concentrated for activities, which is why they were left out.
    return 'too concentrated for activities: measure it';
  }
}

function phOf(of: Entries): Answer {
  const solution: Solution = {
    protolytes: of.rows().map(protolyteOf),
    strongCation: of.number('strongCation'),
    strongAnion: of.number('strongAnion'),
    temperature: of.number('temperature'),
    activities: of.choice('activities') === 'none' ? 'none' : 'Davies',
  };
  const found = solutionPh(solution);
  return {
    results: [
      { ...one('pH', 'pH', found.pH), digits: 2, says: otherwise(solution) },
      { ...one('ionic', 'Ionic strength', found.ionicStrength), digits: 4 },
    ],
  };
}

function bufferOf(of: Entries): Answer {
  const [pKa, acid, salt] = [of.number('pKa'), of.number('acid'), of.number('salt')];
  const exact = solutionPh({
    protolytes: [{ name: 'the acid', pKas: [pKa], charge: 0, concentration: acid + salt }],
    strongCation: salt,
    strongAnion: 0,
    temperature: of.number('temperature'),
    activities: of.choice('activities') === 'none' ? 'none' : 'Davies',
  });
  return {
    results: [
      { ...one('exact', 'pH by the charge balance', exact.pH), digits: 2 },
      { ...one('pH', 'pH by the buffer equation', bufferPh(pKa, acid, salt)), digits: 2 },
      { ...one('capacity', 'Buffer capacity', bufferCapacity(acid + salt, pKa, exact.pH.value)), digits: 4 },
      { ...one('ionic', 'Ionic strength', exact.ionicStrength), digits: 4 },
    ],
  };
}

function activityOf(of: Entries): Answer {
  const found =
    of.choice('known') === 'molality'
      ? waterActivity({ molality: of.number('molality'), k: of.number('k') })
      : waterActivityOfPercent(of.number('percent'), of.number('molarMass'), of.number('k'));
  return { results: [one('activity', 'Water activity', found)] };
}

/** pH, buffers, salts and water activity. */
export const SOLUTION_FORMS = {
  'solution-ph': {
    name: 'pH of acids, bases and their salts',
    asks: 'An acid alone, a neutralised mixture or a buffer: the pH at which all charges cancel.',
    fields: [
      {
        key: 'strongCation',
        label: 'Strong base',
        unit: MOL,
        min: 0,
        max: 20,
        start: 0,
        hint: 'NaOH, or the sodium of salts',
      },
      {
        key: 'strongAnion',
        label: 'Strong acid',
        unit: MOL,
        min: 0,
        max: 20,
        start: 0,
        hint: 'HCl, or the chloride of salts',
      },
      TEMPERATURE,
      WITH,
    ],
    lines: {
      one: 'acid or base',
      caption: 'Weak acids and bases, all their forms together',
      columns: [
        { key: 'name', label: 'Name', words: true },
        { key: 'kind', label: 'Kind', choices: { acid: 'acid', base: 'amine' }, start: 'acid' },
        { key: 'concentration', label: 'In all', unit: MOL, min: 0, max: 20 },
        { key: 'pKa1', label: 'pKa', term: 'pka', min: -10, max: 20 },
        { key: 'pKa2', label: 'Second pKa', min: -10, max: 20, optional: true },
        { key: 'pKa3', label: 'Third pKa', min: -10, max: 20, optional: true },
      ],
      library: { name: 'name', figures: { pKa1: 'pKa' } },
      presetLabel: 'Add from the list',
      presets: PRESETS,
    },
    compute: phOf,
  },
  buffer: {
    name: 'Buffer of an acid and its salt',
    asks: 'The pH of both together, and how much it holds.',
    fields: [
      { key: 'pKa', label: 'pKa of the acid', term: 'pka', min: -10, max: 20 },
      { key: 'acid', label: 'Acid', unit: MOL, min: 0, max: 10 },
      { key: 'salt', label: 'Salt', unit: MOL, min: 0, max: 10 },
      TEMPERATURE,
      WITH,
    ],
    compute: bufferOf,
  },
  'buffer-ratio': {
    name: 'Salt to acid for a pH',
    asks: 'How much salt for each part of acid, and what the buffer holds there.',
    fields: [
      { key: 'pKa', label: 'pKa of the acid', term: 'pka', min: -10, max: 20 },
      { key: 'pH', label: 'pH wanted', min: 0, max: 14 },
      {
        key: 'total',
        label: 'Acid and salt',
        unit: MOL,
        min: 0,
        max: 20,
        optional: true,
        hint: 'for the capacity',
      },
    ],
    compute: (of) => {
      const [pKa, pH, total] = [of.number('pKa'), of.number('pH'), of.optional('total')];
      return {
        results: [
          one('ratio', 'Salt to acid', bufferRatio(pKa, pH)),
          ...(total === null
            ? []
            : [{ ...one('capacity', 'Buffer capacity', bufferCapacity(total, pKa, pH)), digits: 4 }]),
        ],
      };
    },
  },
  'ionic-strength': {
    name: 'Ionic strength',
    asks: 'Of the ions of salts and salted-out actives: what presses on carbomer and ionic emulsifiers.',
    fields: [],
    lines: {
      one: 'ion',
      caption: 'Ions with their charges',
      columns: [
        { key: 'name', label: 'Name', words: true },
        { key: 'concentration', label: 'Concentration', unit: MOL, min: 0, max: 20 },
        { key: 'charge', label: 'Charge', min: -6, max: 6, hint: '−2 for sulfate' },
      ],
    },
    compute: (of) => ({
      results: [
        {
          ...one(
            'ionic',
            'Ionic strength',
            ionicStrength(
              of
                .rows()
                .map((row) => ({ concentration: row.number('concentration'), charge: row.number('charge') })),
            ),
          ),
          digits: 4,
        },
      ],
    }),
  },
  'water-activity': {
    name: 'Water activity',
    asks: 'Of one polyol or sugar in water (Norrish; Raoult with a constant of 0).',
    fields: [
      {
        key: 'known',
        label: 'Known by',
        choices: { percent: 'per cent', molality: 'molality' },
        start: 'percent',
      },
      {
        key: 'percent',
        label: 'Solute',
        unit: '%',
        min: 0,
        max: 99.99,
        hint: 'of solute and water',
        optional: true,
      },
      { key: 'molarMass', label: 'Molar mass', unit: 'g/mol', min: 1, optional: true, hint: 'with per cent' },
      {
        key: 'molality',
        label: 'Molality',
        unit: 'mol/kg',
        min: 0,
        optional: true,
        hint: 'instead of per cent',
      },
      {
        key: 'k',
        label: 'Norrish constant',
        min: -10,
        max: 200,
        hint: 'glycerin 1.16, xylitol 1.66, erythritol 1.34 (Int. J. Dermatol. 2010, 981072); sucrose 6.47, sorbitol 1.65 (not verified)',
      },
    ],
    compute: activityOf,
  },
} as const satisfies Record<string, Form>;
