import { colons, footer, heading, prose, sampleFormula, table, title, twoColumns } from '../layouts';
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
        ['Trade name', 'Larkspur Wax Q'],
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
      tradeName: 'Larkspur Wax Q',
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
      'figures.acidValue': { low: null, value: 1.2, high: 3 },
      'figures.saponificationValue': within(160, 168, 175),
      'figures.iodineValue': { low: null, value: 0.8, high: 2 },
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
        [
          'Hazard statements',
          'H314 Causes severe skin burns and eye damage. H290 May be corrosive to metals.',
        ],
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
    },
    // H314 is said of acids as well.
    unsure: ['hazards'],
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
];
