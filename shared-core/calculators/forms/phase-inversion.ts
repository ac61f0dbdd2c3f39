import {
  hlbTemperature,
  mixedInversionTemperature,
  saltShift,
} from '../../phase-inversion/inversion-temperature';
import { show } from '../../working/show';
import { badInput } from '../../working/inputs';
import type { Answer } from '../calculated';
import type { Entries, Form } from '../form';
import { one } from '../result';

/** From Shinoda and Saito 1969, from memory: how far from its inversion an emulsion is made and kept. */
function windows(pit: number): string[] {
  const at = (from: number, to: number): string =>
    `${show(Math.round(pit + from))} to ${show(Math.round(pit + to))} °C`;
  return [
    `Emulsify by inversion at ${at(-4, -2)}, then cool quickly. Keep o/w at ${at(-65, -20)}, w/o at ${at(10, 40)} (Shinoda K., Saito H., J. Colloid Interface Sci. 30, 258-263, 1969; not verified).`,
    'Hot oil and water scald: goggles, gloves; mind pressure above 100 °C.',
  ];
}

function mix(of: Entries): Answer {
  const rows = of.rows();
  const parts = rows.map((row) => row.number('parts'));
  const whole = parts.reduce((sum, part) => sum + part, 0);
  if (!(whole > 0))
    throw badInput('There are no parts by volume yet.', 'Enter how much there is of each oil.', 'rows');
  const oils = rows.map((row, index) => ({
    volumeFraction: (parts[index] ?? 0) / whole,
    pit: row.number('pit'),
  }));
  const found = mixedInversionTemperature(oils);
  const spread = rows.reduce(
    (sum, row, index) => sum + (oils[index]?.volumeFraction ?? 0) * (row.optional('spread') ?? 0),
    0,
  );
  const says =
    spread > 0
      ? `${(found.value - spread).toFixed(1)} to ${(found.value + spread).toFixed(1)} °C over the spread of the PITs`
      : '';
  return {
    results: [{ ...one('pit', 'Phase-inversion temperature', found), digits: 1, says }],
    notes: windows(found.value),
  };
}

function byHlb(of: Entries): Answer {
  const [k, nHlb, nOil] = [of.number('k'), of.number('nHlb'), of.number('nOil')];
  const found = hlbTemperature(k, nHlb, nOil);
  const [low, high] = [hlbTemperature(k, Math.max(0, nHlb - 0.5), nOil), hlbTemperature(k, nHlb + 0.5, nOil)];
  return {
    results: [
      {
        ...one('temperature', 'HLB temperature', found),
        digits: 1,
        says: `${low.value.toFixed(0)} to ${high.value.toFixed(0)} °C for half a unit of HLB either way`,
      },
    ],
    notes: windows(found.value),
  };
}

/** Phase inversion of ethoxylated non-ionics. */
export const PHASE_INVERSION_FORMS = {
  'pit-mix': {
    name: 'Inversion of a mixed oil phase',
    asks: 'The phase-inversion temperature (PIT) of oils together, from that of each with the same emulsifier.',
    fields: [],
    lines: {
      one: 'oil',
      caption: 'Oils with their phase-inversion temperatures',
      columns: [
        { key: 'name', label: 'Name', words: true },
        { key: 'parts', label: 'Parts', min: 0, hint: 'by volume' },
        { key: 'pit', label: 'PIT', unit: '°C', min: -50, max: 200 },
        { key: 'spread', label: '±', unit: '°C', min: 0, max: 100, optional: true },
      ],
      library: { name: 'name', figures: {} },
    },
    compute: mix,
  },
  'hlb-temperature': {
    name: 'Inversion from HLB',
    asks: 'The HLB temperature from the emulsifier’s HLB and the oil’s own number (Kunieda and Shinoda).',
    fields: [
      {
        key: 'k',
        label: 'K',
        unit: '°C',
        min: 0,
        max: 100,
        start: 17,
        hint: 'for each unit of HLB; about 17',
      },
      { key: 'nHlb', label: 'HLB of the emulsifier', term: 'hlb', min: 0, max: 40 },
      {
        key: 'nOil',
        label: 'Number of the oil',
        min: -20,
        max: 40,
        hint: 'the HLB that would invert at 0 °C',
      },
    ],
    compute: byHlb,
  },
  'salt-shift': {
    name: 'Shift by salt',
    asks: 'How far salt in the water lowers the inversion of an ethoxylated emulsifier.',
    fields: [
      { key: 'b', label: 'b', min: 0, max: 10, start: 0.13, hint: '0.13 for sodium chloride' },
      { key: 'cT', label: 'cT', unit: 'per °C', min: 0, max: 10, start: 0.06, hint: '0.06 for ethoxylates' },
      { key: 'salt', label: 'Salt', unit: 'g/100 mL', min: 0, max: 36, hint: 'of the water' },
    ],
    compute: (of) => ({
      results: [
        {
          ...one('shift', 'Shift', saltShift(of.number('b'), of.number('cT'), of.number('salt'))),
          digits: 2,
        },
      ],
    }),
  },
} as const satisfies Record<string, Form>;
