import type { SubstanceContent } from '../substance';
import type { StarterSubstance } from './entry';

type List = NonNullable<SubstanceContent['allergenList']>;

/** An allergen under its own name on the label. */
const own = (
  list: List,
  name: string,
  cas: string,
  more: Partial<StarterSubstance> = {},
): StarterSubstance => ({
  name,
  cas,
  allergen: list,
  allergenLabel: name,
  ...more,
});

/** Those that share one name on the label: counted together under it. */
function together(label: string, members: readonly (readonly [string, string?])[]): StarterSubstance[] {
  return members.map(([name, cas = '']) => ({
    name,
    cas,
    allergen: 'added 2023',
    allergenLabel: label,
    groups: [`${label} (allergens)`],
  }));
}

const older = (name: string, cas: string, more?: Partial<StarterSubstance>) =>
  own('older 26', name, cas, more);
const added = (name: string, cas: string, more?: Partial<StarterSubstance>) =>
  own('added 2023', name, cas, more);

/** The 26 allergens declared before 2023. */
const OLDER: readonly StarterSubstance[] = [
  older('Amyl Cinnamal', '122-40-7'),
  older('Benzyl Alcohol', '100-51-6', { formula: 'C7H8O' }),
  older('Cinnamyl Alcohol', '104-54-1'),
  older('Citral', '5392-40-5', { also: ['Geranial', 'Neral'] }),
  older('Eugenol', '97-53-0'),
  older('Hydroxycitronellal', '107-75-5'),
  older('Isoeugenol', '97-54-1'),
  older('Amylcinnamyl Alcohol', '101-85-9'),
  older('Benzyl Salicylate', '118-58-1'),
  older('Cinnamal', '104-55-2', { also: ['Cinnamaldehyde'] }),
  older('Coumarin', '91-64-5'),
  older('Geraniol', '106-24-1'),
  older('Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde', '31906-04-4', { also: ['HICC'] }),
  older('Anise Alcohol', '105-13-5', { also: ['Anisyl Alcohol'] }),
  older('Benzyl Cinnamate', '103-41-3'),
  older('Farnesol', '4602-84-0'),
  older('Butylphenyl Methylpropional', '80-54-6'),
  older('Linalool', '78-70-6'),
  older('Benzyl Benzoate', '120-51-4'),
  older('Citronellol', '106-22-9'),
  older('Hexyl Cinnamal', '101-86-0'),
  older('Limonene', '5989-27-5, 138-86-3', { also: ['d-Limonene'] }),
  older('Methyl 2-Octynoate', '111-12-6'),
  older('Alpha-Isomethyl Ionone', '127-51-5'),
  older('Evernia Prunastri Extract', '90028-68-5', { also: ['Oakmoss Extract'] }),
  older('Evernia Furfuracea Extract', '90028-67-4', { also: ['Treemoss Extract'] }),
];

/** Substances added by Regulation (EU) 2023/1545 under a name of their own. */
const SUBSTANCES: readonly StarterSubstance[] = [
  added('6-Methyl Coumarin', '92-48-8'),
  added('3-Propylidenephthalide', '17369-59-4'),
  added('Acetyl Cedrene', '32388-55-9'),
  added('Alpha-Terpinene', '99-86-5'),
  added('Amyl Salicylate', '2050-08-0'),
  added('Anethole', '104-46-1, 4180-23-8', { also: ['trans-Anethole'] }),
  added('Benzaldehyde', '100-52-7'),
  added('Beta-Caryophyllene', '87-44-5', { also: ['Caryophyllene'] }),
  added('Camphor', '76-22-2, 464-49-3'),
  added('Carvone', '99-49-0, 6485-40-1, 2244-16-8', { also: ['d-Carvone', 'l-Carvone'] }),
  added('Dimethyl Phenethyl Acetate', '151-05-3'),
  added('Eugenyl Acetate', '93-28-7'),
  added('Geranyl Acetate', '105-87-3'),
  added('Hexadecanolactone', '109-29-5'),
  added('Hexamethylindanopyran', '1222-05-5'),
  added('Isoeugenyl Acetate', '93-29-8'),
  added('Linalyl Acetate', '115-95-7'),
  added('Menthol', '89-78-1, 1490-04-6, 2216-51-5'),
  added('Methyl Salicylate', '119-36-8'),
  added('Salicylaldehyde', '90-02-8'),
  added('Sclareol', '515-03-7'),
  added('Terpinolene', '586-62-9'),
  added('Trimethylbenzenepropanol', '103694-68-4'),
  added('Trimethylcyclopentenyl Methylisopentenol', '67801-20-1'),
  added('Vanillin', '121-33-5'),
];

/** Isomers and close kin that share an entry, and so a name on the label. */
const GROUPED: readonly StarterSubstance[] = [
  ...together('Pinene', [['Pinene'], ['Alpha-Pinene', '80-56-8'], ['Beta-Pinene', '127-91-3']]),
  ...together('Rose Ketones', [
    ['Rose Ketones'],
    ['Alpha-Damascone', '43052-87-5'],
    ['Beta-Damascone', '23726-92-3'],
    ['Delta-Damascone', '57378-68-4'],
    ['Gamma-Damascone'],
    ['Damascenone', '23696-85-7'],
  ]),
  ...together('Santalol', [
    ['Santalol', '11031-45-1'],
    ['Alpha-Santalol', '115-71-9'],
    ['Beta-Santalol', '77-42-9'],
  ]),
  ...together('Terpineol', [
    ['Terpineol', '8000-41-7'],
    ['Alpha-Terpineol', '98-55-5'],
    ['Beta-Terpineol'],
    ['Gamma-Terpineol'],
  ]),
  ...together('Tetramethyl Acetyloctahydronaphthalenes', [
    ['Tetramethyl Acetyloctahydronaphthalenes', '54464-57-2, 54464-59-4, 68155-66-8, 68155-67-9'],
  ]),
];

/** Oils and extracts added by the same Regulation; several of one genus share a name. */
const NATURALS: readonly StarterSubstance[] = [
  ...together('Cananga Odorata Oil/Extract', [
    ['Cananga Odorata Oil/Extract', '83863-30-3, 8006-81-3'],
    ['Cananga Odorata Flower Oil'],
    ['Cananga Odorata Flower Extract'],
  ]),
  ...together('Cedrus Atlantica Oil/Extract', [
    ['Cedrus Atlantica Oil/Extract', '92201-55-3, 8023-85-6'],
    ['Cedrus Atlantica Bark Oil'],
    ['Cedrus Atlantica Wood Oil'],
  ]),
  added('Cinnamomum Cassia Leaf Oil', '8007-80-5, 84961-46-6'),
  added('Cinnamomum Zeylanicum Bark Oil', '84649-98-9'),
  ...together('Citrus Aurantium Flower Oil', [
    ['Citrus Aurantium Flower Oil', '8016-38-4'],
    ['Citrus Aurantium Amara Flower Oil'],
    ['Citrus Aurantium Dulcis Flower Oil'],
  ]),
  ...together('Citrus Aurantium Peel Oil', [
    ['Citrus Aurantium Peel Oil', '68916-04-1'],
    ['Citrus Aurantium Amara Peel Oil'],
  ]),
  {
    name: 'Citrus Aurantium Dulcis Peel Oil',
    usName: 'Citrus Aurantium Dulcis (Orange) Peel Oil',
    cas: '8008-57-9',
    also: ['Citrus Sinensis Peel Oil Expressed'],
    allergen: 'added 2023',
    allergenLabel: 'Citrus Aurantium Peel Oil',
    groups: ['Citrus Aurantium Peel Oil (allergens)'],
  },
  added('Citrus Aurantium Bergamia Peel Oil', '8007-75-8'),
  added('Citrus Limon Peel Oil', '84929-31-7', { usName: 'Citrus Limon (Lemon) Peel Oil' }),
  added('Eucalyptus Globulus Oil', '8000-48-4, 97926-40-4', { also: ['Eucalyptus Globulus Leaf Oil'] }),
  ...together('Eugenia Caryophyllus Oil', [
    ['Eugenia Caryophyllus Oil', '8000-34-8'],
    ['Eugenia Caryophyllus Leaf Oil'],
    ['Eugenia Caryophyllus Bud Oil'],
    ['Eugenia Caryophyllus Flower Oil'],
  ]),
  ...together('Jasmine Oil/Extract', [
    ['Jasmine Oil/Extract', '8022-96-6, 84776-64-7'],
    ['Jasminum Grandiflorum Flower Extract'],
    ['Jasminum Officinale Oil'],
    ['Jasminum Officinale Flower Extract'],
  ]),
  added('Juniperus Virginiana Oil', '8000-27-9, 85085-41-2'),
  added('Laurus Nobilis Leaf Oil', '8002-41-3, 84603-73-6'),
  {
    name: 'Lavandula Angustifolia Oil',
    usName: 'Lavandula Angustifolia (Lavender) Oil',
    cas: '8000-28-0',
    allergen: 'added 2023',
    allergenLabel: 'Lavandula Oil/Extract',
    groups: ['Lavandula Oil/Extract (allergens)'],
  },
  ...together('Lavandula Oil/Extract', [
    ['Lavandula Oil/Extract'],
    ['Lavandula Hybrida Oil'],
    ['Lavandula Intermedia Oil'],
    ['Lavandula Hybrida Extract'],
    ['Lavandula Angustifolia Extract'],
    ['Lavandula Angustifolia Flower Oil'],
  ]),
  ...together('Lemongrass Oil', [
    ['Lemongrass Oil', '8007-02-1'],
    ['Cymbopogon Schoenanthus Oil'],
    ['Cymbopogon Flexuosus Oil'],
    ['Cymbopogon Citratus Leaf Oil'],
  ]),
  added('Lippia Citriodora Absolute', '8024-12-2, 85116-63-8'),
  added('Mentha Piperita Oil', '8006-90-4, 84082-70-2', { usName: 'Mentha Piperita (Peppermint) Oil' }),
  added('Mentha Viridis Leaf Oil', '8008-79-5, 84696-51-5', {
    usName: 'Mentha Viridis (Spearmint) Leaf Oil',
  }),
  ...together('Myroxylon Pereirae Oil/Extract', [
    ['Myroxylon Pereirae Oil/Extract', '8007-00-9'],
    ['Myroxylon Balsamum Pereirae Balsam Extract'],
    ['Myroxylon Balsamum Pereirae Balsam Oil'],
  ]),
  ...together('Narcissus Extract', [
    ['Narcissus Extract'],
    ['Narcissus Poeticus Extract'],
    ['Narcissus Pseudonarcissus Extract'],
    ['Narcissus Jonquilla Extract'],
    ['Narcissus Tazetta Extract'],
  ]),
  added('Pelargonium Graveolens Flower Oil', '8000-46-2, 90082-51-2', {
    also: ['Pelargonium Graveolens Oil'],
  }),
  added('Pinus Mugo', '90082-72-7', { also: ['Pinus Mugo Leaf Oil'] }),
  added('Pinus Pumila', '97676-05-6', { also: ['Pinus Pumila Needle Extract'] }),
  added('Pogostemon Cablin Oil', '8014-09-3, 84238-39-1'),
  ...together('Rose Flower Oil/Extract', [
    ['Rose Flower Oil/Extract', '8007-01-0'],
    ['Rosa Damascena Flower Oil'],
    ['Rosa Damascena Flower Extract'],
    ['Rosa Alba Flower Oil'],
    ['Rosa Alba Flower Extract'],
    ['Rosa Centifolia Flower Oil'],
    ['Rosa Centifolia Flower Extract'],
    ['Rosa Gallica Flower Oil'],
    ['Rosa Moschata Flower Oil'],
    ['Rosa Rugosa Flower Oil'],
  ]),
  added('Santalum Album Oil', '8006-87-9, 84787-70-2', { usName: 'Santalum Album (Sandalwood) Oil' }),
  added('Turpentine', '8006-64-2, 9005-90-7, 8052-14-0'),
];

/** Fragrance allergens by name, list and label: the 26, and those of Regulation (EU) 2023/1545 with their groups. */
export const STARTER_ALLERGENS: readonly StarterSubstance[] = [
  ...OLDER,
  ...SUBSTANCES,
  ...GROUPED,
  ...NATURALS,
];
