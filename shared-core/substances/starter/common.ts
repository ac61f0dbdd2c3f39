import type { StarterSubstance } from './entry';

/** Substances whose label names differ between Europe and the United States; common practice. */
const TWO_NAMES: readonly (readonly [string, string, ...string[]])[] = [
  ['Aqua', 'Water', 'Eau', 'Purified Water', 'Deionised Water'],
  ['Parfum', 'Fragrance', 'Perfume'],
  ['Aroma', 'Flavor', 'Flavour'],
  ['Alcohol Denat.', 'Alcohol Denat.', 'Denatured Alcohol', 'SD Alcohol'],
  ['Alcohol', 'Alcohol', 'Ethanol'],
  ['Cera Alba', 'Beeswax', 'Cera Flava'],
  ['Cera Microcristallina', 'Microcrystalline Wax', 'Microcrystalline Wax'],
  ['Paraffinum Liquidum', 'Mineral Oil'],
  ['Copernicia Cerifera Cera', 'Copernicia Cerifera (Carnauba) Wax', 'Carnauba Wax'],
  ['Euphorbia Cerifera Cera', 'Euphorbia Cerifera (Candelilla) Wax', 'Candelilla Wax', 'Candelilla Cera'],
  ['Butyrospermum Parkii Butter', 'Butyrospermum Parkii (Shea) Butter', 'Shea Butter'],
  ['Theobroma Cacao Seed Butter', 'Theobroma Cacao (Cocoa) Seed Butter', 'Cocoa Butter'],
  ['Prunus Amygdalus Dulcis Oil', 'Prunus Amygdalus Dulcis (Sweet Almond) Oil', 'Sweet Almond Oil'],
  ['Helianthus Annuus Seed Oil', 'Helianthus Annuus (Sunflower) Seed Oil', 'Sunflower Seed Oil'],
  ['Olea Europaea Fruit Oil', 'Olea Europaea (Olive) Fruit Oil', 'Olive Oil'],
  ['Ricinus Communis Seed Oil', 'Ricinus Communis (Castor) Seed Oil', 'Castor Oil'],
  ['Cocos Nucifera Oil', 'Cocos Nucifera (Coconut) Oil', 'Coconut Oil'],
  ['Simmondsia Chinensis Seed Oil', 'Simmondsia Chinensis (Jojoba) Seed Oil', 'Jojoba Oil'],
  ['Persea Gratissima Oil', 'Persea Gratissima (Avocado) Oil', 'Avocado Oil'],
  ['Glycerin', 'Glycerin', 'Glycerine', 'Glycerol'],
  ['Rosa Damascena Flower Water', 'Rosa Damascena Flower Water', 'Rose Water'],
];

/** Substances that go by one name everywhere: what the demonstration is made of, and what stands on most labels. */
const ONE_NAME = `Acacia Senegal Gum; Acrylates/C10-30 Alkyl Acrylate Crosspolymer; Allantoin; Aminomethyl Propanol; Amodimethicone;
Ammonium Acryloyldimethyltaurate/VP Copolymer; Arachidyl Alcohol; Arachidyl Glucoside; Ascorbic Acid; Behenamidopropyl Dimethylamine;
Behentrimonium Chloride; Behentrimonium Methosulfate; Behenyl Alcohol; Betaine; Bisabolol; Butylene Glycol; C12-15 Alkyl Benzoate;
Calendula Officinalis Flower Extract;
Caprylic/Capric Triglyceride; Carbomer; Cellulose Gum; Ceteareth-6; Ceteareth-12; Ceteareth-20; Cetearyl Alcohol;
Cetearyl Glucoside; Ceteth-10; Ceteth-20; Cetethyl Morpholinium Ethosulfate; Cetrimonium Chloride; Cetyl Alcohol;
Cetyl PEG/PPG-10/1 Dimethicone; Citric Acid; Coco-Caprylate; Coco-Glucoside; Cocamidopropyl Betaine; Decyl Glucoside; Decyl Oleate;
Dicaprylyl Ether; Dimethicone; Dipropylene Glycol; Disodium EDTA; Distearyldimonium Chloride; Ethylhexyl Palmitate; Glyceryl Oleate;
Glyceryl Stearate; Glyceryl Stearate Citrate; Glyceryl Stearate SE; Guar Hydroxypropyltrimonium Chloride; Hydrogenated Lecithin;
Hydrolyzed Wheat Protein; Hydroxyethylcellulose; Hydroxypropyl Starch Phosphate; Isododecane; Isohexadecane; Isopropyl Alcohol; Isopropyl Myristate;
Isopropyl Palmitate; Lanolin; Laureth-4; Laureth-7; Laureth-23; Lecithin; Magnesium Aluminum Silicate; Magnesium Sulfate;
Methyl Glucose Sesquistearate; Niacinamide; Octyldodecanol; Oleth-10; Panthenol; PEG-7 Hydrogenated Castor Oil; PEG-8 Stearate;
PEG-20 Methyl Glucose Sesquistearate; PEG-30 Dipolyhydroxystearate; PEG-40 Hydrogenated Castor Oil; PEG-40 Stearate;
PEG-100 Stearate; PEG-150 Distearate; Pentylene Glycol; Petrolatum; Phosphoric Acid; Poloxamer 407; Polyglyceryl-2 Dipolyhydroxystearate;
Polyglyceryl-3 Diisostearate; Polyglyceryl-3 Methylglucose Distearate; Polyglyceryl-10 Laurate; Polyglyceryl-10 Stearate;
Polyquaternium-10; Polysorbate 20; Polysorbate 60; Polysorbate 65; Polysorbate 80; Potassium Cetyl Phosphate; Potassium Oleate;
Propanediol; Propylene Glycol; Rosa Canina Fruit Oil; Sclerotium Gum; Silica; Silica Dimethyl Silylate;
Sodium Acrylate/Sodium Acryloyldimethyl Taurate Copolymer; Sodium Chloride; Sodium Cocoyl Isethionate; Sodium Hyaluronate;
Sodium Lauryl Sulfate; Sodium Laureth Sulfate; Sodium Oleate; Sodium PCA; Sodium Phytate; Sodium Polyacrylate; Sodium Stearate;
Sodium Stearoyl Glutamate; Sodium Stearoyl Lactylate; Sorbitan Laurate; Sorbitan Oleate; Sorbitan Sesquioleate; Sorbitan Stearate;
Sorbitan Tristearate; Sorbitol; Squalane; Stearamidopropyl Dimethylamine; Steareth-2; Steareth-10; Steareth-21; Stearic Acid;
Stearyl Alcohol; Sucrose Distearate; Sucrose Stearate; Tetrasodium EDTA; Tocopherol; Tocopheryl Acetate; Tromethamine; Urea;
Xanthan Gum`;

export const STARTER_COMMON: readonly StarterSubstance[] = [
  ...TWO_NAMES.map(([name, usName, ...also]): StarterSubstance => ({
    name,
    usName: usName === name ? '' : usName,
    also: also.filter((other) => other !== usName),
  })),
  ...ONE_NAME.split(/;\s*/).map((name): StarterSubstance => ({ name: name.trim() })),
];
