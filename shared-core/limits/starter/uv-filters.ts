import type { LimitContent } from '../limit';
import { amended, annex, example, notAtAll, type TextOfLaw } from './entry';

const READ_2020 = '31 December 2020';
const READ_2009 = 'predecessor list of 7 May 2009';
const READ_2022 = '8 July 2022';
const filter = { purpose: 'uv filter' } as const;
const SPRAYS = ['propellant spray', 'pump spray'] as const;
const MAY_BE_INHALED = 'The nano form not in products that may expose the lungs by inhalation.';
const plain = (subject: string, percent: number, entry: string, asOf?: string): LimitContent =>
  example(subject, percent, annex('VI', entry, asOf), filter);
const later = (subject: string, percent: number, entry: string): LimitContent =>
  example(subject, percent, { ...annex('VI', entry), regions: ['EU'] }, filter);

const BP3 = amended('VI', '4', '2022/1176', READ_2022);
const BP3_SINCE = { ...filter, from: '2023-01-28', fromOnShelf: '2023-07-28' } as const;
const BP3_LABEL = { labelPhrase: 'Contains Benzophenone-3', phraseAbove: 0.5 } as const;
const HOMOSALATE = amended('VI', '3', '2022/2195');
const BRITISH = (entry: string, asOf: string): TextOfLaw => ({
  ...annex('VI', entry, asOf),
  regions: ['Great Britain'],
});
const MBC = amended('II', '1730', '2024/996', '4 April 2024');

/** UV filters of Annex VI. Europe and Great Britain have parted since 2020. */
export const UV_FILTER_LIMITS: readonly LimitContent[] = [
  plain('Camphor Benzalkonium Methosulfate', 6, '2', READ_2020),
  example('Homosalate', 10, BRITISH('3', READ_2020), filter),
  example('Homosalate', 7.34, HOMOSALATE, {
    ...filter,
    kinds: ['face'],
    exceptKinds: ['propellant spray'],
    from: '2025-01-01',
    fromOnShelf: '2025-07-01',
    condition: 'Face products, except propellant sprays.',
  }),
  notAtAll('Homosalate', HOMOSALATE, {
    ...filter,
    exceptKinds: ['face'],
    from: '2025-01-01',
    fromOnShelf: '2025-07-01',
    condition: 'As a UV filter only in face products, except propellant sprays.',
  }),
  example('Benzophenone-3', 6, BRITISH('4', READ_2020), { ...filter, ...BP3_LABEL }),
  example('Benzophenone-3', 6, BP3, {
    ...BP3_SINCE,
    ...BP3_LABEL,
    kinds: ['face', 'hand', 'lip'],
    exceptKinds: ['body', ...SPRAYS],
    condition: 'Face, hand and lip products, except sprays. With 0.5 % for protecting the formula, 5.5 %.',
  }),
  example('Benzophenone-3', 2.2, BP3, {
    ...BP3_SINCE,
    ...BP3_LABEL,
    kinds: ['body', ...SPRAYS],
    condition: 'Body products, with sprays. With 0.5 % for protecting the formula, 1.7 %.',
  }),
  example('Benzophenone-3', 0.5, BP3, {
    from: '2023-01-28',
    fromOnShelf: '2023-07-28',
    exceptKinds: ['face', 'hand', 'lip', 'body', ...SPRAYS],
    condition: 'Other products.',
  }),
  example('Phenylbenzimidazole sulfonic acid and salts', 8, annex('VI', '6', READ_2020), {
    ...filter,
    of: 'group',
    counting: 'together',
    expressedAs: 'Phenylbenzimidazole Sulfonic Acid',
  }),
  plain('Terephthalylidene Dicamphor Sulfonic Acid', 10, '7', READ_2020),
  plain('Butyl Methoxydibenzoylmethane', 5, '8', READ_2009),
  plain('Benzylidene Camphor Sulfonic Acid', 6, '9', READ_2009),
  example('Octocrylene', 10, BRITISH('10', READ_2009), filter),
  example('Octocrylene', 9, amended('VI', '10', '2022/1176', READ_2022), {
    ...BP3_SINCE,
    kinds: ['propellant spray'],
  }),
  example('Octocrylene', 10, amended('VI', '10', '2022/1176', READ_2022), {
    ...BP3_SINCE,
    exceptKinds: ['propellant spray'],
  }),
  plain('Polyacrylamidomethyl Benzylidene Camphor', 6, '11', READ_2009),
  plain('Ethylhexyl Methoxycinnamate', 10, '12', READ_2009),
  plain('PEG-25 PABA', 10, '13', READ_2009),
  plain('Isoamyl p-Methoxycinnamate', 10, '14', READ_2009),
  plain('Ethylhexyl Triazone', 5, '15', READ_2009),
  plain('Drometrizole Trisiloxane', 15, '16', READ_2009),
  plain('Diethylhexyl Butamido Triazone', 10, '17', READ_2009),
  example('4-Methylbenzylidene Camphor', 4, BRITISH('18', READ_2009), filter),
  notAtAll('4-Methylbenzylidene Camphor', MBC, { from: '2025-05-01', fromOnShelf: '2026-05-01' }),
  plain('Ethylhexyl Salicylate', 5, '20'),
  plain('Ethylhexyl Dimethyl PABA', 8, '21'),
  example('Benzophenone-4 and -5', 5, annex('VI', '22'), {
    ...filter,
    of: 'group',
    counting: 'together',
    expressedAs: 'Benzophenone-4',
  }),
  plain('Methylene Bis-Benzotriazolyl Tetramethylbutylphenol', 10, '23 and 23a'),
  plain('Disodium Phenyl Dibenzimidazole Tetrasulfonate', 10, '24'),
  plain('Bis-Ethylhexyloxyphenol Methoxyphenyl Triazine', 10, '25'),
  plain('Polysilicone-15', 10, '26'),
  plain('Titanium Dioxide', 25, '27 and 27a'),
  plain('Diethylamino Hydroxybenzoyl Hexyl Benzoate', 10, '28'),
  plain('Tris-Biphenyl Triazine', 10, '29'),
  plain('Zinc Oxide', 25, '30 and 30a'),
  later('Phenylene Bis-Diphenyltriazine', 5, '31'),
  later('Methoxypropylamino Cyclohexenylidene Ethoxyethylcyanoacetate', 3, '32'),
  later('Bis-(Diethylaminohydroxybenzoyl Benzoyl) Piperazine', 10, '34 and 34a'),
  ...[
    ['Titanium Dioxide', '27a'] as const,
    ['Zinc Oxide', '30a'] as const,
    ['Methylene Bis-Benzotriazolyl Tetramethylbutylphenol', '23a'] as const,
    ['Tris-Biphenyl Triazine', '29'] as const,
  ].map(([subject, entry]) =>
    notAtAll(subject, annex('VI', entry), {
      ...filter,
      nanoForm: 'nano only',
      kinds: [...SPRAYS, 'loose powder'],
      condition: MAY_BE_INHALED,
    }),
  ),
];
