import { blankMaterial } from '@core/materials/material';
import type { Material, MaterialContent } from '@core/materials/material';

/** When every sample was made. */
export const AT = '2026-03-14T10:30:00.000Z';

export function idOf(number: number): string {
  return `00000000-0000-7000-8000-${String(number).padStart(12, '0')}`;
}

let made = 0;
export function sampleMaterial(
  tradeName: string,
  parts: [inci: string, low: number, high?: number][],
  more: Partial<MaterialContent> = {},
): Material {
  made += 1;
  return {
    ...blankMaterial(tradeName, ''),
    composition: parts.map(([inci, low, high]) => ({
      inci,
      lowPpm: low * 10_000,
      highPpm: (high ?? low) * 10_000,
    })),
    ...more,
    id: idOf(1000 + made),
    revision: 1,
    createdAt: AT,
    updatedAt: AT,
  };
}

function euros(packG: number, price: number): MaterialContent['offers'] {
  return [
    {
      supplier: 'Oakbarrow Supply',
      itemCode: 'OB-118',
      packMg: packG * 1000,
      priceMinor: price * 100,
      currency: 'EUR',
      date: '2026-01-12',
    },
  ];
}

export const WATER = sampleMaterial('Purified water', [['Aqua', 100]], {
  code: 'W-01',
  functions: ['solvent'],
  phaseOfUse: 'water',
  form: 'liquid',
});
export const GLYCERIN = sampleMaterial('Glycerol 99.5', [['Glycerin', 100]], {
  code: 'H-02',
  functions: ['humectant'],
  offers: euros(5000, 21),
});
export const GUM = sampleMaterial('Lissagum Clear', [['Xanthan Gum', 100]], {
  functions: ['thickener'],
  form: 'powder',
  hazards: ['fine dust'],
  offers: euros(1000, 28),
});
export const WAX = sampleMaterial(
  'Velmora VQ 7',
  [
    ['Cetearyl Alcohol', 75, 85],
    ['Ceteareth-20', 15, 25],
  ],
  {
    code: 'E-14',
    functions: ['emulsifier'],
    phaseOfUse: 'oil',
    form: 'pellets',
    consistency: 'waxy',
    appearance: 'White to off-white pellets, faint waxy odour',
    charge: 'non-ionic',
    architecture: 'classic',
    emulsionType: 'o/w',
    body: 'strong',
    electrolyteTolerance: 'high',
    coldProcessable: false,
    solubleIn: ['hot oil', 'disperses in water'],
    origin: 'naturally derived',
    usage: {
      minPpm: 20_000,
      typicalPpm: 50_000,
      maxPpm: 80_000,
      provenance: 'supplier',
      source: 'leaflet 3',
    },
    figures: {
      hlb: { low: 9, value: 9.8, high: 10.5, provenance: 'computed', source: 'Griffin, from composition' },
      meltingPoint: { low: 52, value: null, high: 58, provenance: 'supplier', source: 'leaflet 3' },
      maxTemperature: { low: null, value: 90, high: null, provenance: 'supplier', source: 'leaflet 3' },
      workingPh: { low: 4, value: null, high: 9, provenance: 'supplier', source: 'leaflet 3' },
    },
    storage: {
      minC: 5,
      maxC: 25,
      keepFrom: ['light', 'moisture'],
      shelfLifeMonths: 24,
      afterOpeningMonths: 6,
    },
    handling: 'Melts slowly: break up lumps before heating. Keep the lid closed.',
    notes: 'Gives a dense gel network with fatty alcohols. Class favourite for a first cream.',
    offers: [...euros(1000, 14), ...euros(5000, 58)],
  },
);
export const SOAP = sampleMaterial(
  'Corvane GS 40',
  [
    ['Glyceryl Stearate', 60],
    ['Potassium Stearate', 40],
  ],
  {
    functions: ['emulsifier'],
    form: 'flakes',
    consistency: 'waxy',
    charge: 'anionic',
    architecture: 'classic',
    emulsionType: 'o/w',
    body: 'some',
    figures: { hlb: { low: null, value: 11, high: null, provenance: 'supplier', source: 'leaflet' } },
    offers: euros(1000, 11),
  },
);
export const QUAT = sampleMaterial(
  'Aldermere BT 50',
  [
    ['Behentrimonium Methosulfate', 50],
    ['Cetearyl Alcohol', 50],
  ],
  {
    functions: ['emulsifier', 'conditioning agent'],
    form: 'pellets',
    consistency: 'waxy',
    charge: 'cationic',
    architecture: 'classic',
    emulsionType: 'o/w',
    hazards: ['irritant'],
    offers: euros(1000, 32),
  },
);
export const POLYMER = sampleMaterial(
  'Hallin Gel 88',
  [['Acrylates/C10-30 Alkyl Acrylate Crosspolymer', 100]],
  {
    functions: ['emulsifier', 'thickener'],
    form: 'powder',
    charge: 'anionic',
    architecture: 'polymeric',
    emulsionType: 'o/w',
    electrolyteTolerance: 'low',
    needsNeutralising: true,
    hazards: ['fine dust'],
  },
);
export const OIL = sampleMaterial('Sweet almond oil', [['Prunus Amygdalus Dulcis Oil', 100]], {
  functions: ['emollient'],
  form: 'liquid',
  consistency: 'oily',
  figures: {
    requiredHlbOw: { low: null, value: 6, high: null, provenance: 'published', source: 'handbook' },
  },
  offers: euros(5000, 62),
});
export const ESTER = sampleMaterial('Lindmere IPM', [['Isopropyl Myristate', 100]], {
  functions: ['emollient'],
  offers: euros(5000, 30),
});
export const FATTY = sampleMaterial('Cetostearyl flakes', [['Cetearyl Alcohol', 100]], {
  functions: ['thickener'],
  form: 'flakes',
  offers: euros(5000, 27),
});
export const VITAMIN = sampleMaterial(
  'Tocorel 70',
  [
    ['Tocopherol', 70],
    ['Helianthus Annuus Seed Oil', 30],
  ],
  {
    functions: ['antioxidant'],
    offers: euros(250, 19),
  },
);
export const PRESERVATIVE = sampleMaterial(
  'Wardwell PE',
  [
    ['Phenoxyethanol', 88, 92],
    ['Ethylhexylglycerin', 8, 12],
  ],
  {
    functions: ['preservative'],
    phaseOfUse: 'cool-down',
    hazards: ['harmful undiluted', 'irritant'],
    offers: euros(1000, 34),
    legalLimit: {
      ppm: 10_000,
      note: 'phenoxyethanol in the finished product',
      source: 'as recorded by the maker',
    },
  },
);
export const SCENT = sampleMaterial('Hedgerow accord 7', [['Parfum', 100]], {
  functions: ['fragrance'],
  phaseOfUse: 'cool-down',
  hazards: ['sensitiser', 'flammable'],
  allergens: [
    { inci: 'Linalool', ppm: 12_000 },
    { inci: 'Limonene', ppm: 4_000 },
    { inci: 'Citral', ppm: 900 },
  ],
  offers: euros(100, 26),
});
export const LYE = sampleMaterial(
  'Sodium hydroxide 10 %',
  [
    ['Aqua', 90],
    ['Sodium Hydroxide', 10],
  ],
  {
    functions: ['base'],
    hazards: ['caustic'],
    offers: euros(1000, 9),
  },
);
export const ACID = sampleMaterial(
  'Citric acid 50 %',
  [
    ['Citric Acid', 50],
    ['Aqua', 50],
  ],
  {
    functions: ['acid'],
    hazards: ['irritant'],
    offers: euros(1000, 8),
  },
);

export const MATERIALS: Record<string, Material> = Object.fromEntries(
  [
    WATER,
    GLYCERIN,
    GUM,
    WAX,
    SOAP,
    QUAT,
    POLYMER,
    OIL,
    ESTER,
    FATTY,
    VITAMIN,
    PRESERVATIVE,
    SCENT,
    LYE,
    ACID,
  ].map((one) => [one.id, one]),
);
