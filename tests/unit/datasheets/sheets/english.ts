import {
  beside,
  colons,
  footer,
  heading,
  leaders,
  prose,
  sampleFormula,
  stacked,
  table,
  title,
  twoColumns,
} from '../layouts';
import { least, most, one, part, range, whole, within, type InventedSheet } from './sheet';

const CONTACT = footer(
  'Brookmill Example Supplies, 12 Nowhere Lane, telephone +00 123 4567-89-0, fax 20-30',
  'The figures above are no specification. Valid until 2031-12-31, page 1 of 1.',
);

export const ENGLISH: InventedSheet[] = [
  {
    name: 'two open columns, a contact below',
    content: [
      title('Technical Data Sheet'),
      twoColumns([
        ['Trade name', 'Larkspur Wax 68'],
        ['INCI name', 'Cetearyl Alcohol (and) Ceteareth-20'],
        ['CAS No.', '67762-27-0, 68439-49-6'],
        ['EC No.', '267-008-6'],
        ['Appearance', 'White to off-white pellets'],
        ['HLB value', '11.5'],
        ['Acid value', 'max. 1 mg KOH/g'],
        ['Melting range', '58 – 62 °C'],
        ['Recommended use level', '2 – 5 %'],
        ['Storage temperature', '5 – 25 °C'],
        ['Shelf life', '24 months from date of manufacture'],
      ]),
      CONTACT,
    ],
    found: {
      tradeName: 'Larkspur Wax 68',
      composition: [part('Cetearyl Alcohol', 0, 100), part('Ceteareth-20', 0, 100)],
      casNumbers: '67762-27-0, 68439-49-6',
      appearance: 'White to off-white pellets',
      form: 'pellets',
      'figures.hlb': one(11.5),
      'figures.acidValue': most(1),
      'figures.meltingPoint': range(58, 62),
      'usage.range': range(2, 5),
      'storage.range': range(5, 25),
      'storage.shelfLifeMonths': 24,
    },
  },
  {
    name: 'a grid with unit, limits, typical value and method',
    content: [
      title('LARKSPUR ESTER GS'),
      table(
        [
          ['Property', 'Unit', 'Specification', 'Typical value', 'Method'],
          ['Acid value', 'mg KOH/g', 'max. 3.0', '1.2', 'ISO 660'],
          ['Saponification value', 'mg KOH/g', '160 – 175', '168', 'ISO 3657'],
          ['Iodine value', 'g I2/100 g', 'max. 2', '0.8', 'ISO 3961'],
          ['Hydroxyl value', 'mg KOH/g', '290 – 330', '310', 'ISO 4326'],
          ['Melting point', '°C', '54 – 60', '57', 'ISO 6321'],
          ['Water', '%', 'max. 1', '0.4', 'ISO 8534'],
        ],
        [130, 70, 90, 80, '*'],
      ),
      CONTACT,
    ],
    found: {
      tradeName: 'LARKSPUR ESTER GS',
      'figures.acidValue': within2(null, 1.2, 3),
      'figures.saponificationValue': within(160, 168, 175),
      'figures.iodineValue': within2(null, 0.8, 2),
      'figures.meltingPoint': within(54, 57, 60),
    },
  },
  {
    name: 'a grid of least and most, with a method between',
    content: [
      title('Product specification'),
      colons([['Product name', 'Harrow Squalane 92']]),
      table(
        [
          ['Parameter', 'Method', 'Min.', 'Max.', 'Unit'],
          ['Acid value', 'AOCS 5a-40', '', '0.5', 'mg KOH/g'],
          ['Saponification value', 'AOCS 3-25', '', '3.0', 'mg KOH/g'],
          ['Iodine value', 'AOCS 1-25', '', '4.0', 'g I2/100g'],
          ['Density (20 °C)', 'ISO 3675', '0.807', '0.811', 'g/cm³'],
          ['Refractive index', 'ISO 6320', '1.451', '1.453', ''],
        ],
        [130, 90, 60, 60, '*'],
      ),
    ],
    found: {
      tradeName: 'Harrow Squalane 92',
      'figures.acidValue': most(0.5),
      'figures.saponificationValue': most(3),
      'figures.iodineValue': most(4),
      'figures.density': range(0.807, 0.811),
    },
  },
  {
    name: 'labels with colons, storage and hazards in words',
    content: [
      title('Dunmere Base 50'),
      colons([
        ['Chemical name', 'Sodium hydroxide solution 50 %'],
        ['INCI', 'Sodium Hydroxide (50 %), Aqua (50 %)'],
        ['CAS number', '1310-73-2'],
        ['Physical state', 'liquid'],
        ['Density at 20 °C', '1.525 g/cm3'],
        ['pH', '> 13'],
        ['Hazard statements', 'H314 Causes severe skin burns and eye damage. H290 May be corrosive to metals.'],
        ['Storage', 'Keep above 15 °C in a closed container. Protect from frost and air.'],
      ]),
    ],
    found: {
      tradeName: 'Dunmere Base 50',
      composition: [part('Sodium Hydroxide', 50), part('Aqua', 50)],
      casNumbers: '1310-73-2',
      form: 'liquid',
      'figures.density': one(1.525),
      'figures.phAsSupplied': least(13),
      'storage.range': least(15),
      'storage.keepFrom': ['frost', 'air'],
      hazards: ['caustic'],
    },
  },
  {
    name: 'running text alone',
    content: [
      title('Fernley Cream Maker'),
      ...[
        prose(
          'Fernley Cream Maker is a non-ionic emulsifier with an HLB of 9.5 for creams and lotions. It gives 12 % more body than the grade before, and was tried by 40 people.',
          'The recommended use level is 3 to 6 %. In cold climates add 20 % more of it. The acid value is below 2 mg KOH/g.',
          'Fernley Cream Maker melts between 52 and 58 °C. Heat the oil phase to 75 °C before it is added.',
          'Store in a cool, dry place below 30 °C, protected from light and moisture. It can be stored for 24 months in the unopened container.',
        ),
      ],
    ],
    found: {
      tradeName: 'Fernley Cream Maker',
      'figures.hlb': one(9.5),
      'usage.range': range(3, 6),
      'figures.acidValue': most(2),
      'figures.meltingPoint': range(52, 58),
      'storage.range': most(30),
      'storage.keepFrom': ['light', 'moisture'],
      'storage.shelfLifeMonths': 24,
    },
  },
  {
    name: 'running text that speaks of partners, oils and emulsions',
    content: [
      title('Fernley Partner 5'),
      prose(
        'Fernley Partner 5 works well together with an emulsifier with an HLB of 16. It is meant for oil phases with a required HLB of 7.',
        'Emulsions made with it have a pH of 5.5 and a viscosity of 12000 mPa·s. The formula should be kept below 40 °C while it is stirred.',
        'In a study of 20 people with 5 % of a blend, the skin held 30 % more water after 24 months. Call 555-12-3 for more.',
        'The batch melts at 70 °C. A cream of 2 – 5 % of it with a density of 0.98 g/mL can be stored for 12 months in the formula.',
      ),
    ],
    found: { tradeName: 'Fernley Partner 5' },
  },
  {
    name: 'a guide formula beside the data',
    content: [
      title('Marlow Gel 40'),
      heading('Technical data'),
      twoColumns([
        ['INCI name', 'Xanthan Gum'],
        ['Appearance', 'Cream-coloured powder'],
        ['Usage level', '0.2 – 1.0 %'],
      ]),
      sampleFormula(
        'Guide formulation: light gel',
        ['Phase', 'INCI name', '% w/w'],
        [
          ['A', 'Aqua', '88.0'],
          ['A', 'Glycerin', '5.0'],
          ['A', 'Marlow Gel 40', '0.8'],
          ['B', 'Phenoxyethanol', '1.0'],
        ],
        ['pH value: 5.2', 'Viscosity: 8500 mPa·s', 'Typical use level: 2 – 5 %', 'Appearance: clear liquid'],
      ),
      heading('Storage'),
      prose('Store at 10 – 30 °C. Shelf life is 36 months.'),
    ],
    found: {
      tradeName: 'Marlow Gel 40',
      composition: whole('Xanthan Gum'),
      appearance: 'Cream-coloured powder',
      form: 'powder',
      'usage.range': range(0.2, 1),
      'storage.range': range(10, 30),
      'storage.shelfLifeMonths': 36,
    },
  },
  {
    name: 'a composition as a table with ranges',
    content: [
      title('Orrin Guard PE'),
      heading('Composition'),
      table(
        [
          ['INCI name', 'CAS No.', 'EC No.', '% w/w'],
          ['Phenoxyethanol', '122-99-6', '204-589-7', '88 – 92'],
          ['Ethylhexylglycerin', '70445-33-9', '408-080-2', '8 – 12'],
        ],
        ['*', 90, 90, 70],
      ),
      heading('Use'),
      colons([
        ['pH range of use', '3 – 9'],
        ['Recommended dosage', '0.5 – 1.1 %'],
        ['Density (25 °C)', '1.09 g/ml'],
      ]),
    ],
    found: {
      tradeName: 'Orrin Guard PE',
      composition: [part('Phenoxyethanol', 88, 92), part('Ethylhexylglycerin', 8, 12)],
      casNumbers: '122-99-6, 70445-33-9',
      'figures.workingPh': range(3, 9),
      'usage.range': range(0.5, 1.1),
      'figures.density': one(1.09),
    },
  },
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

function within2(low: number | null, value: number, high: number) {
  return { low, value, high };
}
