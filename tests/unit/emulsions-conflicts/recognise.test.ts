import * as is from '@core/emulsions/conflicts/recognise';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';

/**
 * Names as the INCI dictionary writes them (from memory): those that a rule must know, and beside them those that look
 * alike and are something else.
 */
const NAMES: Record<
  string,
  { rule: (of: ReturnType<typeof make>) => boolean; knows: string[]; not: string[] }
> = {
  'fatty acids': {
    rule: is.isFattyAcid,
    knows: [
      ...[
        'Hydrogenated Palm Acid',
        'Hydroxystearic Acid',
        '12-Hydroxystearic Acid',
        'Linolenic Acid',
        'Erucic Acid',
      ],
      'Stearic Acid',
      'Oleic Acid',
      'C18-36 Acid',
      'Coconut Acid',
      'Isostearic Acid',
      'Ricinoleic Acid',
    ],
    not: [
      ...['Polyhydroxystearic Acid', 'Azelaic Acid'],
      'Citric Acid',
      'Lactic Acid',
      'Stearyl Alcohol',
      'Glyceryl Stearate',
      'Stearic Acid Oil',
      'Hyaluronic Acid',
    ],
  },
  soaps: {
    rule: is.isSoap,
    knows: [
      'Sodium Stearate',
      'TEA-Stearate',
      'Potassium Cocoate',
      'Glyceryl Stearate SE',
      'Sodium Palm Kernelate',
      'Sodium Shea Butterate',
      'Sodium Cocoa Butterate',
      'Sodium Sunflowerseedate',
      'Potassium Caprylate',
    ],
    not: [
      'Magnesium Stearate',
      'Sodium Stearoyl Lactylate',
      'Glyceryl Stearate',
      'Sodium Stearyl Fumarate',
      'Sodium Lactate',
    ],
  },
  'acrylic polymers': {
    rule: is.isAcrylicPolymer,
    knows: [
      ...['Polyacrylate Crosspolymer-6', 'Polyacrylate-1 Crosspolymer', 'Acrylates Crosspolymer-4'],
      'Carbomer',
      'Sodium Carbomer',
      'Acrylates/C10-30 Alkyl Acrylate Crosspolymer',
      'Acrylates Copolymer',
      'Sodium Polyacrylate',
      'Ammonium Acryloyldimethyltaurate/VP Copolymer',
      'Hydroxyethyl Acrylate/Sodium Acryloyldimethyl Taurate Copolymer',
    ],
    not: [
      ...['Acrylates/Dimethicone Copolymer', 'Polymethyl Methacrylate'],
      'Polyacrylamide',
      'Butyl Acrylate',
      'VP/VA Copolymer',
      'Hydroxyethylcellulose',
    ],
  },
  'anionic gums': {
    rule: is.isAnionicGum,
    knows: [
      ...[
        'Hyaluronic Acid',
        'Hydrolyzed Hyaluronic Acid',
        'Sodium Acetylated Hyaluronate',
        'Potassium Hyaluronate',
        'Alginic Acid',
        'Sodium Carrageenan',
      ],
      'Xanthan Gum',
      'Cellulose Gum',
      'Algin',
      'Carrageenan',
      'Sodium Hyaluronate',
      'Acacia Senegal Gum',
      'Pectin',
    ],
    not: [
      ...['Konjac', 'Pullulan'],
      'Guar Gum',
      'Hydroxyethylcellulose',
      'Sclerotium Gum',
      'Caesalpinia Spinosa Gum',
      'Hydroxypropyl Guar',
    ],
  },
  'anionic surfactants': {
    rule: is.isAnionicSurfactant,
    knows: [
      ...[
        'Ceteth-10 Phosphate',
        'Oleth-3 Phosphate',
        'Sodium Lauryl Phosphate',
        'Potassium C9-15 Alkyl Phosphate',
        'Laureth-11 Carboxylic Acid',
        'Lauroyl Sarcosine',
        'Sodium Lauroyl Oat Amino Acids',
        'Potassium Cocoyl Hydrolyzed Soy Protein',
        'Sodium Stearyl Sulfate',
        'Sodium Pareth-12 Sulfate',
        'Sodium Cocomonoglyceride Sulfate',
        'Sodium C14-17 Alkyl Sec Sulfonate',
        'Sodium Lauryl Glucose Carboxylate',
        'Disodium Coco-Glucoside Citrate',
        'Sodium Cocoyl Threoninate',
        'Sodium Caproyl Lactylate',
        'Sodium Methyl 2-Sulfolaurate',
        'Glyceryl Oleate Citrate',
        'Sodium Surfactin',
      ],
      'Sodium Laureth Sulfate',
      'Sodium Coco-Sulfate',
      'TEA-Lauryl Sulfate',
      'Sodium C12-13 Pareth Sulfate',
      'Disodium Laureth Sulfosuccinate',
      'Sodium Lauryl Sulfoacetate',
      'Sodium Laureth-5 Carboxylate',
      'Sodium C14-16 Olefin Sulfonate',
      'Sodium Methyl Cocoyl Taurate',
      'Sodium Stearoyl Lactylate',
      'Sodium Cocoyl Isethionate',
      'Disodium Cocoyl Glutamate',
      'Potassium Cetyl Phosphate',
      'Dicetyl Phosphate',
      'Glyceryl Stearate Citrate',
    ],
    not: [
      ...[
        'Sodium Ascorbyl Phosphate',
        'Tocopheryl Phosphate',
        'Phosphoric Acid',
        'Stearyl Citrate',
        'Glucosamine Sulfate',
        'Coco-Glucoside',
      ],
      'Magnesium Sulfate',
      'Laureth-4',
      'Cetearyl Glucoside',
      'Tricalcium Phosphate',
      'Sodium Lactate',
      'Lauroyl Lysine',
      'Behentrimonium Methosulfate',
      'Triethyl Citrate',
    ],
  },
  'cationic polymers': {
    rule: is.isCationicPolymer,
    knows: [
      ...[
        'Cocodimonium Hydroxypropyl Hydrolyzed Wheat Protein',
        'Laurdimonium Hydroxypropyl Hydrolyzed Collagen',
        'Hydroxypropyltrimonium Honey',
      ],
      'Polyquaternium-7',
      'Guar Hydroxypropyltrimonium Chloride',
      'Chitosan',
    ],
    not: [
      ...['Hydroxypropyl Starch Phosphate', 'Hydrolyzed Wheat Protein'],
      'Quaternium-18',
      'Guar Gum',
      'Behentrimonium Chloride',
      'Hydroxypropyl Guar',
    ],
  },
  'cationic surfactants': {
    rule: is.isCationicSurfactant,
    knows: [
      ...[
        'Isostearamidopropyl Ethyldimonium Ethosulfate',
        'Brassicyl Isoleucinate Esylate',
        'Domiphen Bromide',
        'Bis-Ethyl(isostearylimidazoline) Isostearamide',
      ],
      'Behentrimonium Methosulfate',
      'Cetrimonium Chloride',
      'Distearyldimonium Chloride',
      'Benzalkonium Chloride',
      'Cetylpyridinium Chloride',
      'Stearamidopropyl Dimethylamine',
      'Dipalmitoylethyl Hydroxyethylmonium Methosulfate',
      'Hexamidine Diisethionate',
      'Chlorhexidine Digluconate',
      'Quaternium-87',
      'Ethyl Lauroyl Arginate HCl',
    ],
    not: [
      ...[
        'Quaternium-15',
        'Cocodimonium Hydroxypropyl Hydrolyzed Keratin',
        'Cocamidopropyl Betaine',
        'Choline Chloride',
      ],
      'Polyquaternium-10',
      // A quaternised gum is a polymer; an organoclay holds its quaternary for good.
      'Guar Hydroxypropyltrimonium Chloride',
      'Starch Hydroxypropyltrimonium Chloride',
      'Quaternium-18 Bentonite',
      'Quaternium-90 Bentonite',
      'Disteardimonium Hectorite',
      'Arginine',
      'Sodium Chloride',
      'Cocamide MEA',
    ],
  },
  'oxyethylene chains': {
    rule: is.holdsOxyethylene,
    knows: [
      'Steareth-21',
      'PEG-40 Hydrogenated Castor Oil',
      'PEG-100 Stearate',
      'Polysorbate 60',
      'Poloxamer 188',
      'Sodium Laureth Sulfate',
      'Methyl Gluceth-20',
      'Octoxynol-9',
      'Bis-PEG-18 Methyl Ether Dimethyl Silane',
      'PEG/PPG-18/18 Dimethicone',
      'Cetyl PEG/PPG-10/1 Dimethicone',
      'Trideceth-9',
    ],
    not: [
      'Cetearyl Glucoside',
      'Polyglyceryl-3 Diisostearate',
      'PPG-15 Stearyl Ether',
      'Polyethylene',
      'Ethylhexylglycerin',
      'Sorbitan Stearate',
      'Polyquaternium-10',
      'Dimethicone',
    ],
  },
  'multivalent salts': {
    rule: is.isMultivalentSalt,
    knows: [
      ...[
        'Aluminum Sesquichlorohydrate',
        'Aluminum Zirconium Tetrachlorohydrex Gly',
        'Potassium Alum',
        'Magnesium Ascorbyl Phosphate',
        'Copper Gluconate',
      ],
      'Magnesium Sulfate',
      'Zinc PCA',
      'Calcium Chloride',
      'Aluminum Chlorohydrate',
      'Magnesium Lactate',
    ],
    not: [
      ...['Zinc Ricinoleate'],
      'Sodium Chloride',
      'Zinc Oxide',
      'Magnesium Stearate',
      'Calcium Carbonate',
      'Potassium Lactate',
    ],
  },
  bases: {
    rule: is.isBase,
    knows: [
      'Sodium Hydroxide',
      'Triethanolamine',
      'Aminomethyl Propanol',
      'Tromethamine',
      'Arginine',
      'Sodium Borate',
      'Aminomethyl Propanediol',
      'Calcium Hydroxide',
      'Sodium Metasilicate',
    ],
    not: ['Sodium Chloride', 'Aqua', 'Aluminum Hydroxide', 'Sodium Benzoate', 'Acetyl Arginine Amide'],
  },
  electrolytes: {
    rule: is.isElectrolyte,
    knows: [
      'Sodium Chloride',
      'Sodium PCA',
      'Magnesium Sulfate',
      'Maris Sal',
      'Disodium Phosphate',
      'Sodium Ascorbyl Phosphate',
    ],
    not: ['Sodium Hydroxide', 'Sodium Hyaluronate', 'Glycerin', 'Zinc Oxide', 'Niacinamide'],
  },
  chelators: {
    rule: is.isChelator,
    knows: [
      'Disodium EDTA',
      'EDTA',
      'Sodium Phytate',
      'Phytic Acid',
      'Tetrasodium Glutamate Diacetate',
      'Trisodium NTA',
      'Etidronic Acid',
      'Sodium Gluconate',
      'Pentasodium Pentetate',
      'Tetrasodium Iminodisuccinate',
      'Trisodium Dicarboxymethyl Alaninate',
    ],
    not: ['Citric Acid', 'Hydrolyzed Placenta', 'Sodium Glutamate', 'Phytosterols'],
  },
  'fatty alcohols': {
    rule: is.holdsFattyAlcohol,
    knows: ['Cetyl Alcohol', 'Cetearyl Alcohol', 'C14-22 Alcohols', 'C20-40 Alcohols', 'Behenyl Alcohol'],
    not: [
      ...['Alcohol', 'Benzyl Alcohol', 'Lanolin Alcohol', 'Isopropyl Alcohol', 'Cetyl Palmitate'],
      // Liquid when cold, so that they build no body.
      ...['C9-11 Alcohols', 'C12-13 Alcohols', 'Isostearyl Alcohol', 'Oleyl Alcohol', 'Octyldodecanol'],
    ],
  },
  water: {
    rule: is.bringsWater,
    knows: [
      'Aqua',
      'Water',
      'Aqua/Water/Eau',
      'Aqua (Water)',
      'Rosa Damascena Flower Water',
      'Aloe Barbadensis Leaf Juice',
      'Maris Aqua',
      'Glycerin (and) Aqua',
      'Aqua & Glycerin',
      'Water and Glycerin',
    ],
    not: [
      'Aloe Barbadensis Leaf Juice Powder',
      'Aquaxyl',
      'Waterlily Extract',
      'Glycerin',
      'Sodium Chloride',
    ],
  },
};

describe.each(Object.entries(NAMES))('of %s', (_, { rule, knows, not }) => {
  it.each(knows)('%s is one', (inci) => {
    expect(rule(make('Alone', inci))).toBe(true);
    // However it is written, and inside a blend.
    expect(rule(make('Shouted', `  ${inci.toUpperCase()} `))).toBe(true);
    expect(rule(make('Blend', ['Pentylene Glycol', inci, 'Tocopherol']))).toBe(true);
    // A supplier's own line of two names.
    expect(rule(make('Joined', `${inci} (and) Pentylene Glycol`))).toBe(true);
    expect(rule(make('Joined', `Pentylene Glycol (and) ${inci}`))).toBe(true);
  });

  it.each(not)('%s is none', (inci) => {
    expect(rule(make('Alone', inci))).toBe(false);
  });

  it('nothing is one by nothing', () => {
    expect(rule(make('Empty', ''))).toBe(false);
    expect(rule({ ...make('None', ''), composition: [] })).toBe(false);
  });
});

describe('what is recorded', () => {
  it('makes a base, an electrolyte and a chelator of what no name tells', () => {
    expect(is.isBase(make('Our alkali', 'Mystery', { functions: ['base'] }))).toBe(true);
    expect(is.isElectrolyte(make('Our salts', 'Mystery', { functions: ['electrolyte'] }))).toBe(true);
    expect(is.isChelator(make('Our chelator', 'Mystery', { functions: ['chelator'] }))).toBe(true);
  });

  it('of salt goes before the name: a carbomer recorded as tolerant is so', () => {
    expect(is.isSaltSensitive(make('Gel', 'Carbomer'))).toBe(true);
    expect(is.isSaltSensitive(make('Gel', 'Carbomer', { electrolyteTolerance: 'moderate' }))).toBe(false);
    expect(is.isSaltSensitive(make('Gel', 'Xanthan Gum'))).toBe(false);
    expect(is.isSaltSensitive(make('Gel', 'Xanthan Gum', { electrolyteTolerance: 'low' }))).toBe(true);
  });

  it('tells what needs a base: carbomer by name, a fatty acid only where it is to emulsify', () => {
    expect(is.needsBase(make('Gel', 'Carbomer'))).toBe(true);
    expect(is.needsBase(make('Gel', 'Sodium Carbomer'))).toBe(false);
    expect(is.needsBase(make('Wax', 'Stearic Acid'))).toBe(false);
    expect(is.needsBase(make('Wax', 'Stearic Acid', { functions: ['emulsifier'] }))).toBe(true);
    expect(is.needsBase(make('Other', 'Acrylates Copolymer', { needsNeutralising: true }))).toBe(true);
  });

  it('counts salts of organic acids as salts, and acids as none', () => {
    for (const salt of [
      'Sodium Benzoate',
      'Potassium Sorbate',
      'Tetrasodium EDTA',
      'Sodium Citrate',
      'Sodium Chloride',
    ])
      expect(is.isSalt(salt), salt).toBe(true);
    for (const none of ['Benzoic Acid', 'Sodium Hydroxide', 'Sodium Laureth Sulfate', 'Salicylic Acid'])
      expect(is.isSalt(none), none).toBe(false);
  });
});
