import type { LimitContent } from '../limit';
import { annex, amended, example, notAtAll, UNDATED, type TextOfLaw } from './entry';

const READ_2017 = '3 September 2017';
const group = { of: 'group', counting: 'together' } as const;
const asPreservative = { purpose: 'preservative' } as const;
const NOT_UNDER_3 = 'Not to be used for children under 3 years of age';

const BENZOIC = annex('V', '1', READ_2017);
const MCI = annex('V', '39');
const MI = annex('V', '57');
const IPBC = annex('V', '56');
const PARABENS = annex('V', '12');
const LONG_PARABENS = annex('V', '12a');
const BANNED_PARABENS: TextOfLaw = annex('II', '1374 to 1378');
const ELA = annex('V', '58');
const DIOXANE = annex('V', '20', '2022 to 2024');
const SALICYLIC_OTHER = annex('III', '98');

const benzoates = { ...group, expressedAs: 'Benzoic Acid' } as const;
const NEVER_WITH_INHALATION = ['propellant spray'] as const;

/** Preservatives of Annex V with what the annexes say of the same substances in other uses. */
export const PRESERVATIVE_LIMITS: readonly LimitContent[] = [
  example('Benzoates', 0.5, BENZOIC, { ...benzoates, use: 'leave-on' }),
  example('Benzoates', 2.5, BENZOIC, { ...benzoates, use: 'rinse-off', exceptKinds: ['oral'] }),
  example('Benzoates', 1.7, BENZOIC, { ...benzoates, kinds: ['oral'], use: 'rinse-off' }),
  example('Other benzoate salts and esters', 0.5, annex('V', '1a', READ_2017), benzoates),
  example('Propionic acid and salts', 2, annex('V', '2'), { ...group, expressedAs: 'Propionic Acid' }),
  example('Salicylic acid and salts', 0.5, annex('V', '3'), {
    ...group,
    ...asPreservative,
    expressedAs: 'Salicylic Acid',
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
    condition: 'Not for children under 3 years, except shampoos.',
  }),
  example('Salicylic acid and salts', 3, SALICYLIC_OTHER, {
    ...group,
    purpose: 'other than preservative',
    expressedAs: 'Salicylic Acid',
    use: 'rinse-off',
    kinds: ['hair'],
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
    condition:
      'Not for children under 3 years, except shampoos. Solely for purposes other than preservation.',
  }),
  example('Salicylic acid and salts', 2, SALICYLIC_OTHER, {
    ...group,
    purpose: 'other than preservative',
    expressedAs: 'Salicylic Acid',
    exceptKinds: ['hair', 'body lotion', 'eye', 'lip', 'roll-on deodorant'],
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
    condition:
      'Not for children under 3 years, not for oral products. Solely for purposes other than preservation.',
  }),
  example('Salicylic acid and salts', 0.5, SALICYLIC_OTHER, {
    ...group,
    purpose: 'other than preservative',
    expressedAs: 'Salicylic Acid',
    kinds: ['body lotion', 'eye', 'lip', 'roll-on deodorant'],
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
  }),
  example('Sorbic acid and sorbates', 0.6, annex('V', '4'), { ...group, expressedAs: 'Sorbic Acid' }),
  example('o-Phenylphenol and salts', 0.2, annex('V', '7'), {
    ...group,
    expressedAs: 'o-Phenylphenol',
    use: 'rinse-off',
  }),
  example('o-Phenylphenol and salts', 0.15, annex('V', '7'), {
    ...group,
    expressedAs: 'o-Phenylphenol',
    use: 'leave-on',
  }),
  example('Methyl- and ethylparaben', 0.4, PARABENS, {
    of: 'group',
    expressedAs: '4-Hydroxybenzoic Acid',
    condition: '0.4 % as acid for a single ester, 0.8 % as acid for mixtures of esters.',
  }),
  example('Parabens', 0.8, PARABENS, { ...group, expressedAs: '4-Hydroxybenzoic Acid' }),
  example('Propyl- and butylparaben', 0.14, LONG_PARABENS, {
    of: 'group',
    counting: 'by shares of their limits',
    expressedAs: '4-Hydroxybenzoic Acid',
    condition: 'The sum of the single concentrations.',
  }),
  notAtAll('Propyl- and butylparaben', LONG_PARABENS, {
    of: 'group',
    use: 'leave-on',
    kinds: ['nappy area'],
    condition: 'Not in leave-on products for the nappy area of children under 3 years.',
  }),
  notAtAll('Prohibited parabens', BANNED_PARABENS, { of: 'group' }),
  example('Dehydroacetic acid and salts', 0.6, annex('V', '13'), {
    ...group,
    expressedAs: 'Dehydroacetic Acid',
    exceptKinds: [...NEVER_WITH_INHALATION],
  }),
  notAtAll('Dehydroacetic acid and salts', annex('V', '13'), {
    of: 'group',
    kinds: [...NEVER_WITH_INHALATION],
    condition: 'Not in aerosol dispensers (sprays).',
  }),
  example('Formic acid and sodium formate', 0.5, annex('V', '14'), { ...group, expressedAs: 'Formic Acid' }),
  example('Undecylenic acid and salts', 0.2, annex('V', '18'), {
    ...group,
    expressedAs: 'Undecylenic Acid',
  }),
  example('5-Bromo-5-Nitro-1,3-Dioxane', 0.1, DIOXANE, {
    use: 'rinse-off',
    condition: 'Avoid formation of nitrosamines.',
  }),
  notAtAll('5-Bromo-5-Nitro-1,3-Dioxane', DIOXANE, {
    use: 'leave-on',
    condition: 'Only in rinse-off products.',
  }),
  example('2-Bromo-2-Nitropropane-1,3-Diol', 0.1, annex('V', '21'), {
    condition: 'Avoid formation of nitrosamines.',
  }),
  example('Imidazolidinyl Urea', 0.6, annex('V', '27')),
  example('Phenoxyethanol', 1, annex('V', '29')),
  example('DMDM Hydantoin', 0.6, annex('V', '33')),
  example('Benzyl Alcohol', 1, annex('V', '34'), asPreservative),
  example('Piroctone Olamine', 1, annex('V', '35'), { use: 'rinse-off' }),
  example('Piroctone Olamine', 0.5, annex('V', '35'), { use: 'leave-on' }),
  example('o-Cymen-5-ol', 0.1, annex('V', '38')),
  example('Methylchloroisothiazolinone with methylisothiazolinone', 0.0015, MCI, {
    ...group,
    use: 'rinse-off',
    condition: 'Of a mixture of 3 to 1. Not together with methylisothiazolinone alone (entry 57).',
  }),
  notAtAll('Methylchloroisothiazolinone', MCI, { use: 'leave-on', condition: 'Only in rinse-off products.' }),
  example('Methylisothiazolinone', 0.0015, MI, { use: 'rinse-off' }),
  notAtAll('Methylisothiazolinone', MI, { use: 'leave-on', condition: 'Only in rinse-off products.' }),
  example('Chlorhexidine and salts', 0.3, annex('V', '42'), { ...group, expressedAs: 'Chlorhexidine' }),
  example('Phenoxyisopropanol', 1, annex('V', '43'), { ...asPreservative, use: 'rinse-off' }),
  notAtAll('Phenoxyisopropanol', annex('V', '43'), {
    ...asPreservative,
    use: 'leave-on',
    condition: 'As a preservative only in rinse-off products.',
  }),
  example('Diazolidinyl Urea', 0.5, annex('V', '46')),
  example('Hexamidine and salts', 0.1, annex('V', '47'), group),
  example('Chlorphenesin', 0.3, annex('V', '50')),
  example('Sodium Hydroxymethylglycinate', 0.5, annex('V', '51')),
  example('Benzalkonium salts', 0.1, annex('V', '54'), {
    ...group,
    ...asPreservative,
    expressedAs: 'Benzalkonium Chloride',
    labelPhrase: 'Avoid contact with eyes',
  }),
  example('Benzalkonium salts', 3, annex('III', '65'), {
    ...group,
    purpose: 'other than preservative',
    expressedAs: 'Benzalkonium Chloride',
    use: 'rinse-off',
    kinds: ['hair'],
    labelPhrase: 'Avoid contact with eyes',
  }),
  example('Iodopropynyl Butylcarbamate', 0.02, IPBC, {
    use: 'rinse-off',
    exceptKinds: ['oral', 'lip'],
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
    condition:
      'Not for oral and lip products; not for children under 3 years, except bath products and shampoo.',
  }),
  example('Iodopropynyl Butylcarbamate', 0.01, IPBC, {
    use: 'leave-on',
    exceptKinds: ['oral', 'lip', 'deodorant'],
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
    condition: 'Not for oral and lip products, not for body lotion or cream over large parts of the body.',
  }),
  example('Iodopropynyl Butylcarbamate', 0.0075, IPBC, {
    kinds: ['deodorant'],
    notForUsers: ['children under 3 years'],
    labelPhrase: NOT_UNDER_3,
  }),
  notAtAll('Iodopropynyl Butylcarbamate', IPBC, { kinds: ['oral', 'lip'] }),
  example('Ethyl Lauroyl Arginate HCl', 0.4, ELA, {
    exceptKinds: ['lip', 'oral', 'propellant spray', 'pump spray'],
  }),
  notAtAll('Ethyl Lauroyl Arginate HCl', ELA, { kinds: ['lip', 'oral', 'propellant spray', 'pump spray'] }),
  example(
    'Formaldehyde releasers',
    null,
    { ...amended('V', 'preamble, 2', '2022/1181', '2022 to 2024') },
    {
      of: 'group',
      rule: 'notice',
      labelPhrase: 'Releases formaldehyde',
      condition: 'When the formaldehyde released passes 0.001 % of the product: measure it.',
      from: '2024-07-31',
      fromOnShelf: '2026-07-31',
    },
  ),
  example('Triclosan', 0.3, amended('V', '25', '2024/996', UNDATED), {
    kinds: ['toothpaste', 'hand wash', 'shower gel', 'roll-on deodorant', 'face powder'],
  }),
  example('Triclosan', 0.2, amended('V', '25', '2024/996', UNDATED), { kinds: ['mouthwash'] }),
  notAtAll('Triclosan', amended('V', '25', '2024/996', UNDATED), {
    exceptKinds: [
      'toothpaste',
      'hand wash',
      'shower gel',
      'roll-on deodorant',
      'face powder',
      'mouthwash',
      'nail',
    ],
    condition: 'Only in the products that the entry names.',
  }),
  example('Triclocarban', 0.2, amended('V', '23', '2024/996', UNDATED), { exceptKinds: ['mouthwash'] }),
  notAtAll('Triclocarban', amended('V', '23', '2024/996', UNDATED), {
    kinds: ['mouthwash'],
    condition: 'Not in mouthwashes.',
  }),
];
