import type { LimitContent } from '../limit';
import { example, UNDATED, type TextOfLaw } from './entry';

const SUNSCREEN: TextOfLaw = {
  source: 'United States, over-the-counter sunscreen order M020 (formerly 21 CFR 352.10)',
  asOf: UNDATED,
  regions: ['US'],
};
const monograph = (source: string): TextOfLaw => ({
  source: `United States, over-the-counter order ${source}`,
  asOf: UNDATED,
  regions: ['US'],
});
const DRUG = 'An active of a drug sold without prescription, not of a cosmetic.';
const filter = (subject: string, percent: number): LimitContent =>
  example(subject, percent, SUNSCREEN, { purpose: 'uv filter', condition: DRUG });
const active = (subject: string, least: number, most: number, source: string, what: string): LimitContent =>
  example(subject, most, monograph(source), {
    rule: 'range of the active',
    minPercent: least,
    condition: `${what}. ${DRUG}`,
  });
const advice = (source: string, regions: TextOfLaw['regions']): TextOfLaw => ({
  source,
  asOf: UNDATED,
  regions,
});
const SUNBURN =
  'Sunburn Alert: This product contains an alpha hydroxy acid (AHA) that may increase your skin’s sensitivity to the sun and particularly the possibility of sunburn. Use a sunscreen, wear protective clothing, and limit sun exposure while using this product and for a week afterwards.';
const AHA_US = advice('Industry expert panel, Int. J. Toxicol. 17 (Suppl. 1) 1998; FDA guidance 2005', [
  'US',
]);
const AHA_EU = advice('Scientific committee of the European Union, SCCNFP/0370/00', ['EU']);
const NOT_LAW = { standing: 'advice, not law', of: 'group', counting: 'together' } as const;

/** Actives of the United States' orders on drugs sold without prescription, and advice that is no law. */
export const US_LIMITS: readonly LimitContent[] = [
  filter('Aminobenzoic Acid', 15),
  filter('Butyl Methoxydibenzoylmethane', 3),
  filter('Cinoxate', 3),
  filter('Benzophenone-8', 3),
  filter('Phenylbenzimidazole Sulfonic Acid', 4),
  filter('Homosalate', 15),
  filter('Menthyl Anthranilate', 5),
  filter('Ethylhexyl Methoxycinnamate', 7.5),
  filter('Ethylhexyl Salicylate', 5),
  filter('Octocrylene', 10),
  filter('Benzophenone-3', 6),
  filter('Ethylhexyl Dimethyl PABA', 8),
  filter('Benzophenone-4', 10),
  filter('Titanium Dioxide', 25),
  filter('TEA-Salicylate', 12),
  filter('Zinc Oxide', 25),
  active('Salicylic Acid', 0.5, 2, 'M006 (21 CFR 333)', 'Acne'),
  active('Benzoyl Peroxide', 2.5, 10, 'M006', 'Acne'),
  active('Sulfur', 3, 10, 'M006', 'Acne'),
  active('Zinc Pyrithione', 0.3, 2, 'M032 (21 CFR 358)', 'Dandruff, rinse-off'),
  active('Dimethicone', 1, 30, 'M016 (21 CFR 347)', 'Skin protectant'),
  active('Hydrocortisone', 0.25, 1, 'M017', 'External analgesic'),
  example('Glycolic acid and salts', 4, AHA_EU, { ...NOT_LAW, expressedAs: 'Glycolic Acid', phLow: 3.8 }),
  example('Lactic acid and salts', 2.5, AHA_EU, { ...NOT_LAW, expressedAs: 'Lactic Acid', phLow: 5 }),
  example('Alpha-hydroxy acids, their salts and esters', 10, AHA_US, {
    ...NOT_LAW,
    hands: 'general public',
    phLow: 3.5,
    labelPhrase: SUNBURN,
  }),
  example('Alpha-hydroxy acids, their salts and esters', 30, AHA_US, {
    ...NOT_LAW,
    hands: 'professional use',
    phLow: 3,
    labelPhrase: SUNBURN,
    condition: 'Brief rinse-off use in salons.',
  }),
];
