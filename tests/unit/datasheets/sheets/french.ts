import { beside, colons, heading, leaders, prose, sampleFormula, table, title, twoColumns } from '../layouts';
import { most, one, part, range, within, type InventedSheet } from './sheet';

export const FRENCH: InventedSheet[] = [
  {
    name: 'fiche technique en deux colonnes',
    content: [
      title('Fiche technique'),
      twoColumns([
        ['Nom commercial', 'Valombre Cire 70'],
        ['Nom INCI', 'Cetearyl Alcohol (and) Cetearyl Glucoside'],
        ['N° CAS', '67762-27-0'],
        ['Aspect', 'granulés blancs à légèrement jaunes'],
        ['Valeur HLB', '11'],
        ['Indice d’acide', 'max. 1,0 mg KOH/g'],
        ['Indice de saponification', '≤ 4 mg KOH/g'],
        ['Point de fusion', '58 à 66 °C'],
        ['Dose d’emploi', '3 à 5 %'],
        ['Durée de conservation', '24 mois dans l’emballage d’origine'],
        ['Température de stockage', 'entre 5 et 25 °C'],
      ]),
    ],
    found: {
      tradeName: 'Valombre Cire 70',
      composition: [part('Cetearyl Alcohol', 0, 100), part('Cetearyl Glucoside', 0, 100)],
      casNumbers: '67762-27-0',
      appearance: 'granulés blancs à légèrement jaunes',
      form: 'granules',
      'figures.hlb': one(11),
      'figures.acidValue': most(1),
      'figures.saponificationValue': most(4),
      'figures.meltingPoint': range(58, 66),
      'usage.range': range(3, 5),
      'storage.shelfLifeMonths': 24,
      'storage.range': range(5, 25),
    },
  },
  {
    name: 'caractéristiques avec unité et méthode',
    content: [
      title('VALOMBRE HUILE N'),
      table(
        [
          ['Caractéristiques', 'Unités', 'Spécifications', 'Valeurs typiques', 'Méthodes'],
          ['Indice d’acide', 'mg KOH/g', '≤ 0,5', '0,1', 'NF EN ISO 660'],
          ['Indice d’iode', 'g I2/100 g', '80 – 106', '95', 'NF EN ISO 3961'],
          ['Densité à 20 °C', 'g/cm³', '0,910 – 0,920', '0,915', 'NF EN ISO 6883'],
          ['Point d’éclair', '°C', '> 200', '', ''],
        ],
        [120, 70, 90, 90, '*'],
      ),
    ],
    found: {
      tradeName: 'VALOMBRE HUILE N',
      'figures.acidValue': { low: null, value: 0.1, high: 0.5 },
      'figures.iodineValue': within(80, 95, 106),
      'figures.density': within(0.91, 0.915, 0.92),
    },
  },
  {
    name: 'texte suivi et formule indicative',
    content: [
      title('Rivebelle Gel'),
      prose(
        'La dose d’emploi est de 0,3 à 1 % dans le produit fini. Le pH est de 6 à 8. Le mélange est chauffé à 70 °C.',
        'Conserver à l’abri de la lumière et de l’humidité, à une température inférieure à 25 °C. La durée de conservation est de 36 mois.',
      ),
      sampleFormula(
        'Formule indicative : sérum',
        ['Phase', 'Nom INCI', '%'],
        [
          ['A', 'Aqua', '90,0'],
          ['B', 'Panthenol', '2,0'],
        ],
        ['pH : 5,0', 'Dose d’emploi : 4 à 9 %'],
      ),
    ],
    found: {
      tradeName: 'Rivebelle Gel',
      'usage.range': range(0.3, 1),
      'figures.phAsSupplied': range(6, 8),
      'storage.range': most(25),
      'storage.keepFrom': ['light', 'moisture'],
      'storage.shelfLifeMonths': 36,
    },
  },
  {
    name: 'composition en tableau, deux blocs côte à côte',
    content: [
      title('Rivebelle Base 4'),
      heading('Composition'),
      table(
        [
          ['Dénomination INCI', 'Teneur (%)'],
          ['Decyl Glucoside', '50 – 55'],
          ['Aqua', '45 – 50'],
        ],
        ['*', 100],
      ),
      heading('Propriétés'),
      beside(
        colons([
          ['Forme', 'liquide visqueux'],
          ['pH', '11,5 – 12,5'],
        ]),
        colons([
          ['Odeur', 'faible'],
          ['Viscosité (20 °C)', '1000 – 2500 mPa.s'],
        ]),
      ),
    ],
    found: {
      tradeName: 'Rivebelle Base 4',
      composition: [part('Decyl Glucoside', 50, 55), part('Aqua', 45, 50)],
      form: 'viscous liquid',
      'figures.phAsSupplied': range(11.5, 12.5),
      'figures.viscosity': range(1000, 2500),
    },
  },
  {
    name: 'points de conduite et mentions de danger',
    content: [
      title('Fiche de données de sécurité', 13),
      leaders([
        ['Nom du produit', 'Rivebelle Fleur 9'],
        ['Aspect', 'liquide limpide'],
        ['Masse volumique', '0,91 g/cm3'],
        ['Point d’ébullition', '198 °C'],
      ]),
      colons([
        ['Mentions de danger', 'H226 Liquide inflammable. H317 Peut provoquer une allergie cutanée.'],
        ['Fournisseur', 'Maison Exemple, tél. 01 23 45 67 89'],
      ]),
    ],
    found: {
      tradeName: 'Rivebelle Fleur 9',
      appearance: 'liquide limpide',
      form: 'liquid',
      'figures.density': one(0.91),
      hazards: ['flammable', 'sensitiser'],
    },
  },
  {
    name: 'gamme de trois grades et rien d’autre',
    content: [
      title('Gamme Valombre P'),
      table(
        [
          ['Propriété', 'P 20', 'P 40', 'P 60'],
          ['HLB', '16,7', '15,6', '14,9'],
          ['Point de fusion, °C', '12', '20', '25 – 30'],
        ],
        [140, 80, 80, 80],
      ),
      prose('Les émulsions obtenues ont un pH de 5 à 6 et une densité de 0,98 g/cm³.'),
    ],
    found: { tradeName: 'Gamme Valombre P' },
  },
];
