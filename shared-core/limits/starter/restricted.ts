import type { LimitContent } from '../limit';
import { amended, annex, example, notAtAll, UNDATED, type TextOfLaw } from './entry';

const together = { of: 'group', counting: 'together' } as const;
const SINCE_2025 = { from: '2025-02-01', fromOnShelf: '2025-11-01' } as const;
const VITAMIN_A = {
  ...together,
  expressedAs: 'Retinol',
  from: '2025-11-01',
  fromOnShelf: '2027-05-01',
  labelPhrase: 'Contains Vitamin A. Consider your daily intake before use',
} as const;
const of2024 = (entry: string): TextOfLaw => amended('III', entry, '2024/996', '4 April 2024');
const of2022 = (entry: string): TextOfLaw => amended('III', entry, '2022/2195', '11 November 2022');
const BHT_SINCE = { from: '2023-07-01', fromOnShelf: '2024-01-01' } as const;
const ALKALI = { ...together, expressedAs: 'Sodium Hydroxide' } as const;
const ALKALI_LABEL = {
  labelPhrase: 'Contains alkali. Avoid contact with eyes. Can cause blindness. Keep out of reach of children',
} as const;
const PEROXIDE = { ...together, expressedAs: 'Hydrogen Peroxide' } as const;
const PEROXIDE_LABEL = {
  labelPhrase:
    'Contains hydrogen peroxide. Avoid contact with eyes. Rinse eyes immediately if product comes into contact with them',
} as const;
const THIO = { ...together, expressedAs: 'Thioglycolic Acid' } as const;

/** Substances of Annex III with restrictions, and some of Annex II. */
export const RESTRICTED_LIMITS: readonly LimitContent[] = [
  example('Oxalic acid, esters and salts', 5, annex('III', '3'), {
    ...together,
    expressedAs: 'Oxalic Acid',
    kinds: ['hair'],
    hands: 'professional use',
    labelPhrase: 'For professional use only',
  }),
  notAtAll('Oxalic acid, esters and salts', annex('III', '3'), {
    of: 'group',
    exceptKinds: ['hair'],
    condition: 'Only in hair products.',
  }),
  notAtAll('Oxalic acid, esters and salts', annex('III', '3'), {
    of: 'group',
    kinds: ['hair'],
    hands: 'general public',
    condition: 'Only for professional use.',
  }),
  example('Ammonia and its solution', 6, annex('III', '4'), {
    ...together,
    expressedAs: 'Ammonia',
    labelPhrase: 'Contains ammonia',
    phraseAbove: 2,
  }),
  example('Thioglycolic acid and salts', 8, annex('III', '8a'), {
    ...THIO,
    kinds: ['hair waving product', 'hair straightener'],
    hands: 'general public',
    phLow: 7,
    phHigh: 9.5,
  }),
  example('Thioglycolic acid and salts', 11, annex('III', '8a'), {
    ...THIO,
    kinds: ['hair waving product', 'hair straightener'],
    hands: 'professional use',
    phLow: 7,
    phHigh: 9.5,
  }),
  example('Thioglycolic acid and salts', 5, annex('III', '8a'), {
    ...THIO,
    kinds: ['depilatory'],
    phLow: 7,
    phHigh: 12.7,
  }),
  example('Thioglycolic acid and salts', 2, annex('III', '8a'), {
    ...THIO,
    kinds: ['hair'],
    use: 'rinse-off',
    exceptKinds: ['hair waving product', 'hair straightener'],
    phLow: 7,
    phHigh: 9.5,
  }),
  notAtAll('Thioglycolic acid and salts', annex('III', '8a'), {
    of: 'group',
    exceptKinds: ['hair', 'depilatory', 'eye'],
    condition: 'Only in hair products, in depilatories and for waving eyelashes.',
  }),
  notAtAll('Thioglycolic acid and salts', annex('III', '8a'), {
    of: 'group',
    kinds: ['hair'],
    use: 'leave-on',
    condition: 'In hair products that are rinsed off only.',
  }),
  example('Hydrogen peroxide and what releases it', 12, annex('III', '12'), {
    ...PEROXIDE,
    ...PEROXIDE_LABEL,
    kinds: ['hair'],
  }),
  example('Hydrogen peroxide and what releases it', 4, annex('III', '12'), {
    ...PEROXIDE,
    ...PEROXIDE_LABEL,
    kinds: ['face', 'hand', 'body'],
  }),
  example('Hydrogen peroxide and what releases it', 2, annex('III', '12'), {
    ...PEROXIDE,
    ...PEROXIDE_LABEL,
    kinds: ['nail hardener'],
  }),
  example('Hydrogen peroxide and what releases it', 0.1, annex('III', '12'), {
    ...PEROXIDE,
    kinds: ['oral'],
  }),
  example('Hydrogen peroxide and what releases it', 2, annex('III', '12'), {
    ...PEROXIDE,
    ...PEROXIDE_LABEL,
    kinds: ['eye'],
    condition: 'Only in products for eyelashes, for professional use.',
  }),
  notAtAll('Hydrogen peroxide and what releases it', annex('III', '12'), {
    of: 'group',
    exceptKinds: ['hair', 'face', 'hand', 'body', 'nail hardener', 'oral', 'eye'],
    condition: 'Only in the products that the entry names.',
  }),
  example('Alkali hydroxides', 5, annex('III', '15a'), {
    ...ALKALI,
    ...ALKALI_LABEL,
    kinds: ['cuticle remover'],
  }),
  example('Alkali hydroxides', 2, annex('III', '15a'), {
    ...ALKALI,
    ...ALKALI_LABEL,
    kinds: ['hair straightener'],
    hands: 'general public',
  }),
  example('Alkali hydroxides', 4.5, annex('III', '15a'), {
    ...ALKALI,
    kinds: ['hair straightener'],
    hands: 'professional use',
    labelPhrase: 'For professional use only. Avoid contact with eyes. Can cause blindness',
  }),
  example('Alkali hydroxides', null, annex('III', '15a'), {
    ...together,
    rule: 'notice',
    kinds: ['depilatory'],
    phHigh: 12.7,
    condition: 'As a pH adjuster in depilatories: pH below 12.7.',
    labelPhrase: 'Keep out of reach of children. Avoid contact with eyes',
  }),
  example('Alkali hydroxides', null, annex('III', '15a'), {
    ...together,
    rule: 'notice',
    exceptKinds: ['depilatory', 'hair straightener', 'cuticle remover'],
    phHigh: 11,
    condition: 'As a pH adjuster in other products: pH below 11.',
  }),
  example('Resorcinol', 1.25, annex('III', '22'), {
    kinds: ['oxidative hair dye'],
    labelPhrase: 'Contains resorcinol. Rinse hair well after application',
  }),
  example('Resorcinol', 0.5, annex('III', '22'), {
    kinds: ['shampoo', 'leave-on hair care'],
    labelPhrase: 'Contains resorcinol',
  }),
  notAtAll('Resorcinol', annex('III', '22'), {
    exceptKinds: ['hair', 'eye'],
    condition: 'Only in hair dyes, in lotions and shampoos for hair, and in dyes for eyelashes.',
  }),
  example('Water-soluble zinc salts', 1, annex('III', '24'), { ...together, expressedAs: 'Zinc' }),
  example('Fluoride compounds', 0.15, annex('III', '26 to 56'), {
    ...together,
    expressedAs: 'Fluorine',
    kinds: ['oral'],
    labelPhrase: 'Contains fluoride',
    condition: 'The label names the compound. Words on use by children are added above 0.1 %.',
  }),
  notAtAll('Fluoride compounds', annex('III', '26 to 56'), {
    of: 'group',
    exceptKinds: ['oral'],
    condition: 'Only in oral products.',
  }),
  example('Selenium Sulfide', 1, annex('III', '49'), {
    kinds: ['shampoo'],
    labelPhrase: 'Contains selenium disulphide. Avoid contact with eyes or damaged skin',
  }),
  notAtAll('Selenium Sulfide', annex('III', '49'), {
    exceptKinds: ['shampoo'],
    condition: 'Only in shampoos against dandruff.',
  }),
  example('Quinine and salts', 0.5, annex('III', '51'), {
    ...together,
    expressedAs: 'Quinine',
    use: 'rinse-off',
    kinds: ['hair'],
  }),
  example('Quinine and salts', 0.2, annex('III', '51'), {
    ...together,
    expressedAs: 'Quinine',
    use: 'leave-on',
    kinds: ['hair'],
  }),
  notAtAll('Quinine and salts', annex('III', '51'), {
    of: 'group',
    exceptKinds: ['hair'],
    condition: 'Only in hair products.',
  }),
  example('Methanol', null, annex('III', '52'), {
    condition:
      'As a denaturant: 5 % of the ethanol and isopropyl alcohol, not of the product. Work it out by hand.',
    rule: 'notice',
  }),
  example('Talc', null, annex('III', '59'), {
    rule: 'notice',
    kinds: ['loose powder', 'face powder'],
    labelPhrase: 'Keep powder away from children’s nose and mouth',
    condition: 'Powdery products for children under 3 years.',
  }),
  example('Trialkylamines and trialkanolamines', 2.5, annex('III', '62'), {
    of: 'group',
    use: 'leave-on',
    condition:
      'Not with nitrosating systems; purity at least 99 %; nitrosamine at most 50 µg/kg; kept in nitrite-free containers.',
  }),
  example('Trialkylamines and trialkanolamines', null, annex('III', '62'), {
    of: 'group',
    use: 'rinse-off',
    rule: 'notice',
    condition:
      'No share is set. Not with nitrosating systems; purity at least 99 %; nitrosamine at most 50 µg/kg.',
  }),
  example('Acrylamide', 0.00001, annex('III', '66'), {
    use: 'leave-on',
    kinds: ['body'],
    condition: 'As residue of polyacrylamides, 0.1 mg/kg.',
  }),
  example('Acrylamide', 0.00005, annex('III', '66'), {
    exceptKinds: ['body lotion'],
    condition: 'As residue of polyacrylamides, 0.5 mg/kg.',
  }),
  example('Hydroxycitronellal', 1, annex('III', '72', 'United Kingdom, 2008'), { exceptKinds: ['oral'] }),
  example('Isoeugenol', 0.02, annex('III', '73', 'United Kingdom, 2008'), { exceptKinds: ['oral'] }),
  example('Limonene', null, annex('III', '88', 'United Kingdom, 2008'), {
    rule: 'notice',
    condition: 'Peroxide value below 20 mmol/L in the substance as it is bought.',
  }),
  example('Genistein', 0.007, of2024('373'), SINCE_2025),
  example('Daidzein', 0.02, of2024('374'), SINCE_2025),
  example('Kojic Acid', 1, of2024('375'), { ...SINCE_2025, kinds: ['face', 'hand'] }),
  notAtAll('Kojic Acid', of2024('375'), {
    ...SINCE_2025,
    exceptKinds: ['face', 'hand'],
    condition: 'Only in face and hand products.',
  }),
  example('Retinol and its esters', 0.05, of2024('376 to 378'), { ...VITAMIN_A, kinds: ['body lotion'] }),
  example('Retinol and its esters', 0.3, of2024('376 to 378'), {
    ...VITAMIN_A,
    exceptKinds: ['body lotion'],
  }),
  example('Alpha-Arbutin', 2, of2024('379'), { ...SINCE_2025, kinds: ['face cream'] }),
  example('Alpha-Arbutin', 0.5, of2024('379'), { ...SINCE_2025, kinds: ['body lotion'] }),
  notAtAll('Alpha-Arbutin', of2024('379'), {
    ...SINCE_2025,
    exceptKinds: ['face cream', 'body lotion'],
    condition: 'Only in face creams and body lotions.',
  }),
  example('Arbutin', 7, of2024('380'), { ...SINCE_2025, kinds: ['face cream'] }),
  notAtAll('Arbutin', of2024('380'), {
    ...SINCE_2025,
    exceptKinds: ['face cream'],
    condition: 'Only in face creams.',
  }),
  example('BHT', 0.001, of2022('325'), { ...BHT_SINCE, kinds: ['mouthwash'] }),
  example('BHT', 0.1, of2022('325'), { ...BHT_SINCE, kinds: ['toothpaste'] }),
  example('BHT', 0.8, of2022('325'), { ...BHT_SINCE, exceptKinds: ['oral'] }),
  example('CI 47005', 0.5, of2022('326'), { ...BHT_SINCE, kinds: ['non-oxidative hair dye'] }),
  notAtAll(
    'Zinc Pyrithione',
    { ...amended('II', 'by its classification', '2021/1902'), asOf: UNDATED },
    { from: '2022-03-01' },
  ),
  notAtAll('Butylphenyl Methylpropional', amended('II', '1666', '2021/1902'), { from: '2022-03-01' }),
  notAtAll('Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde', annex('II', '1380 to 1382, by (EU) 2017/1410'), {
    from: '2019-08-23',
    fromOnShelf: '2021-08-23',
  }),
  notAtAll('Trimethylbenzoyl Diphenylphosphine Oxide', amended('II', 'by its classification', '2025/877'), {
    from: '2025-09-01',
  }),
];
