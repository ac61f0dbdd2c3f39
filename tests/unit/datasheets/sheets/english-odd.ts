import { beside, colons, heading, leaders, stacked, table, title, twoColumns } from '../layouts';
import { one, range, whole, type InventedSheet } from './sheet';

/** Layouts that mislead, and sheets that say what must not be taken. */
export const ENGLISH_ODD: InventedSheet[] = [
  {
    name: 'labels above their values',
    content: [
      title('Product information'),
      stacked([
        ['Trade name', 'Larkspur Oil C8'],
        ['INCI name', 'Caprylic/Capric Triglyceride'],
        ['Appearance', 'Clear, almost colourless liquid'],
        ['Saponification value', '325 – 345 mg KOH/g'],
        ['Viscosity (20 °C)', '27 – 33 mPa·s'],
      ]),
    ],
    found: {
      tradeName: 'Larkspur Oil C8',
      composition: whole('Caprylic/Capric Triglyceride'),
      appearance: 'Clear, almost colourless liquid',
      form: 'liquid',
      'figures.saponificationValue': range(325, 345),
      'figures.viscosity': range(27, 33),
    },
  },
  {
    name: 'two blocks of data beside each other, and leaders',
    content: [
      title('Sable Quat 85'),
      beside(
        leaders([
          ['Form', 'pellets'],
          ['HLB', '15.2'],
        ]),
        leaders([
          ['Colour', 'white'],
          ['Acid value', '1.5 mg KOH/g'],
        ]),
      ),
      leaders([['Melting point', '80 – 90 °C']]),
    ],
    found: {
      tradeName: 'Sable Quat 85',
      form: 'pellets',
      'figures.hlb': one(15.2),
      'figures.acidValue': one(1.5),
      'figures.meltingPoint': range(80, 90),
    },
  },
  {
    name: 'a table of three grades: none is taken, but for the sheet’s own',
    content: [
      title('Tarn Glucoside range'),
      table(
        [
          ['Property', 'Tarn 8', 'Tarn 10', 'Tarn 12'],
          ['HLB', '13.5', '12.8', '11.9'],
          ['pH', '11.5', '11.8', '12.0'],
          ['Viscosity, mPa·s', '200 – 600', '1000 – 2500', '2000 – 4000'],
        ],
        [120, 90, 90, 90],
      ),
    ],
    found: { tradeName: 'Tarn Glucoside range' },
  },
  {
    name: 'a table of two grades of which one is the material',
    content: [
      title('Data sheet'),
      colons([['Trade name', 'Tarn 10']]),
      table(
        [
          ['Property', 'Tarn 8', 'Tarn 10'],
          ['HLB', '13.5', '12.8'],
          ['Acid value, mg KOH/g', '0.2', '0.4'],
        ],
        [150, 90, 90],
      ),
    ],
    found: { tradeName: 'Tarn 10', 'figures.hlb': one(12.8), 'figures.acidValue': one(0.4) },
  },
  {
    name: 'a dilution’s pH, another scale, missing units, a value that cannot be',
    content: [
      title('Ewer Surf 30'),
      twoColumns([
        ['pH (10 % in water)', '5.5 – 6.5'],
        ['Melting point', '136 – 144 °F'],
        ['Density', '0.97'],
        ['HLB', '55'],
        ['Viscosity', '450'],
        ['Acid value', '0.5 %'],
        ['CAS No.', '56-81-6'],
        ['Use level', '1 – 4 % of the oil phase'],
        ['Iodine value', 'see certificate'],
      ]),
    ],
    found: {
      tradeName: 'Ewer Surf 30',
      'figures.meltingPoint': range(57.7778, 62.2222),
      'figures.density': one(0.97),
    },
    unsure: ['figures.phAsSupplied'],
  },
  {
    name: 'a sheet that contradicts itself',
    content: [
      title('Ewer Butter 3'),
      heading('Specification'),
      twoColumns([
        ['Iodine value', '28 – 36 g I2/100 g'],
        ['Saponification value', '188 – 198 mg KOH/g'],
      ]),
      heading('Typical analysis'),
      twoColumns([
        ['Iodine value', '45 g I2/100 g'],
        ['Saponification value', '192 mg KOH/g'],
      ]),
    ],
    found: { tradeName: 'Ewer Butter 3', 'figures.saponificationValue': range(188, 198) },
    unsure: ['figures.iodineValue'],
  },
];
