import {
  hansenDistance,
  hansenOfBlend,
  hansenTotal,
  parameterOfHlb,
  relativeEnergyDifference,
  type Hansen,
} from '../../solubility/hansen';
import { fedorsParameter, krevelenParameters, type GroupCounts } from '../../solubility/from-groups';
import { FEDORS_GROUPS, KREVELEN_GROUPS } from '../../solubility/groups';
import { PUBLISHED_HANSEN } from '../../solubility/published-parameters';
import type { Answer } from '../calculated';
import type { Entries, Form, FormField, Preset } from '../form';
import { one } from '../result';

const MPA = 'MPa½';
/** Three fields of one substance; `of` tells two substances apart. */
const parts = (of = '', key = ''): FormField[] => [
  { key: `d${key}`, label: `Dispersion${of}`, unit: MPA, min: 0, max: 60 },
  { key: `p${key}`, label: `Polar part${of}`, unit: MPA, min: 0, max: 60 },
  { key: `h${key}`, label: `Hydrogen bonding${of}`, unit: MPA, min: 0, max: 60 },
];
const hansen = (of: Entries, key = ''): Hansen => ({
  d: of.number(`d${key}`),
  p: of.number(`p${key}`),
  h: of.number(`h${key}`),
});
const PRESETS: readonly Preset[] = PUBLISHED_HANSEN.map(([name, { d, p, h, basis }]) => ({
  label: `${name}: ${d}, ${p}, ${h} (${basis === 'computed' ? 'estimated from groups' : 'Hansen; not verified'})`,
  row: { name, d, p, h },
}));

function distance(of: Entries): Answer {
  const [first, second, radius] = [hansen(of, '1'), hansen(of, '2'), of.optional('radius')];
  const red = radius === null ? null : relativeEnergyDifference(first, radius, second);
  return {
    results: [
      { ...one('distance', 'Distance', hansenDistance(first, second)), digits: 2 },
      { ...one('total', 'Total parameter of the first', hansenTotal(first)), digits: 1 },
      ...(red === null
        ? []
        : [
            {
              ...one('red', 'Relative energy difference', red),
              digits: 2,
              says:
                red.value < 1 ? 'inside its sphere: likely to dissolve' : 'outside its sphere: not likely to',
            },
          ]),
    ],
  };
}

function blend(of: Entries): Answer {
  const found = hansenOfBlend(of.rows().map((row) => ({ volume: row.number('parts'), ...hansen(row) })));
  return {
    results: [
      { ...one('d', 'Dispersion', found.d), digits: 2 },
      { ...one('p', 'Polar part', found.p), digits: 2 },
      { ...one('h', 'Hydrogen bonding', found.h), digits: 2 },
    ],
  };
}

/** The groups of the lines, each once. */
function groupsOf(of: Entries): GroupCounts {
  const counts: Record<string, number> = {};
  for (const row of of.rows()) {
    const group = row.choice('group');
    counts[group] = (counts[group] ?? 0) + row.number('count');
  }
  return counts;
}

function krevelen(of: Entries): Answer {
  const found = krevelenParameters(groupsOf(of), of.number('volume'));
  return {
    results: [
      { ...one('d', 'Dispersion', found.d), digits: 1 },
      { ...one('p', 'Polar part', found.p), digits: 1 },
      { ...one('h', 'Hydrogen bonding', found.h), digits: 1 },
    ],
  };
}

function fedors(of: Entries): Answer {
  const { delta, molarVolume } = fedorsParameter(groupsOf(of));
  return {
    results: [
      { ...one('delta', 'Solubility parameter', delta), digits: 1 },
      { ...one('volume', 'Molar volume', molarVolume), digits: 1 },
    ],
  };
}

const groupLines = (table: Readonly<Record<string, unknown>>): Form['lines'] => ({
  one: 'group',
  caption: 'Groups of the molecule',
  columns: [
    {
      key: 'group',
      label: 'Group',
      choices: Object.fromEntries(Object.keys(table).map((key) => [key, key])),
    },
    { key: 'count', label: 'How many', min: 0, max: 1000 },
  ],
});

/** What dissolves in what, by solubility parameters. */
export const SOLUBILITY_FORMS = {
  'hansen-distance': {
    name: 'Distance of two substances',
    asks: 'How alike two substances are by Hansen’s three parameters: the closer, the better one dissolves the other.',
    fields: [
      ...parts(' of the first', '1'),
      ...parts(' of the second', '2'),
      {
        key: 'radius',
        label: 'Radius of the first',
        unit: MPA,
        min: 0.1,
        max: 60,
        optional: true,
        hint: 'of what is to dissolve, where it is known',
      },
    ],
    compute: distance,
  },
  'hansen-total': {
    name: 'Total solubility parameter',
    asks: 'The three parts together, as older tables give it.',
    fields: parts(),
    compute: (of) => ({
      results: [{ ...one('total', 'Total parameter', hansenTotal(hansen(of))), digits: 1 }],
    }),
  },
  'hansen-blend': {
    name: 'Parameters of a mixture of liquids',
    asks: 'What an oil phase or a solvent mixture is as a solvent, by volume.',
    fields: [],
    lines: {
      one: 'liquid',
      caption: 'Liquids with their parameters',
      columns: [
        { key: 'name', label: 'Name', words: true },
        { key: 'parts', label: 'Parts', min: 0, hint: 'by volume' },
        ...parts(),
      ],
      presetLabel: 'Add from the list',
      presets: PRESETS,
    },
    compute: blend,
  },
  'hansen-from-groups': {
    name: 'Hansen parameters from groups',
    asks: 'An estimate from the groups of a molecule (Hoftyzer and van Krevelen).',
    fields: [{ key: 'volume', label: 'Molar volume', unit: 'cm³/mol', min: 1, max: 100_000 }],
    lines: groupLines(KREVELEN_GROUPS),
    compute: krevelen,
  },
  'parameter-from-groups': {
    name: 'Total parameter from groups',
    asks: 'The total parameter and the molar volume from the groups of a molecule (Fedors).',
    fields: [],
    lines: groupLines(FEDORS_GROUPS),
    compute: fedors,
  },
  'hlb-parameter': {
    name: 'Solubility parameter of an emulsifier',
    asks: 'From its HLB (Beerbower’s relation), to set it beside the oil.',
    fields: [{ key: 'hlb', label: 'HLB', term: 'hlb', min: 0, max: 40 }],
    compute: (of) => ({
      results: [{ ...one('parameter', 'Solubility parameter', parameterOfHlb(of.number('hlb'))), digits: 2 }],
    }),
  },
} as const satisfies Record<string, Form>;
