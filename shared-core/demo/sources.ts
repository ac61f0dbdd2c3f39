/**
 * Where the demonstration library's published figures come from, as the reference tables cite them.
 * "(not verified)" marks a source that was recalled, not read: treat its figures with care.
 */
export const GUIDE = "A supplier's technical page, 'Reference Guide to HLB Values of Common Emulsifiers'";
export const LECTURE = "'HLB Calculations', university lecture notes in pharmaceutics, 2007";
export const MIXING_RATIOS = 'PubMed Central PMC3969497, Table I (surfactant mixing ratios for target HLB)';
export const BINARY_SYSTEMS =
  'PubMed Central PMC4137601, Table 2 (calculated HLB of single and binary nonionic systems)';
export const SEED_OIL_CREAMS =
  'OCL - Oilseeds & fats, Crops and Lipids (2022), article ocl210096 (Amesiodendron chinense seed-oil creams), Tables 4 and 5';
export const ALCOHOL_PAGE = "A distributor's technical page on cetostearyl alcohol for topicals";
export const HLB_BOOKLET_1976 =
  "The HLB System: a time-saving guide to emulsifier selection, manufacturer's booklet, 1976 (rev. 1980), HLB and required-HLB lists (not verified)";
export const HLB_BOOKLET_LATER =
  "The HLB System: time-saving guide to surfactant selection, Personal Care edition, manufacturer's booklet (after 2006), required-HLB list and chapter 4 example (not verified)";
export const EXCIPIENTS_HANDBOOK =
  'Rowe R.C., Sheskey P.J., Quinn M.E. (eds), Handbook of Pharmaceutical Excipients, 6th ed., 2009, monograph tables (not verified)';
export const PHYSICAL_PHARMACY =
  "Sinko P.J. (ed.), Martin's Physical Pharmacy and Pharmaceutical Sciences, 5th ed., 2006, chapters on interfacial phenomena and coarse dispersions (not verified)";
export const DOSAGE_FORM_DESIGN =
  'Aulton M.E. (ed.), Pharmaceutics: The Science of Dosage Form Design, 2nd ed., Churchill Livingstone 2002, chapter on disperse systems/emulsions (not verified)';
export const GRIFFIN_1949 =
  'Griffin W.C., Classification of surface-active agents by HLB, J. Soc. Cosmet. Chem. 1, 311-326 (1949), tables (not verified)';
export const GENERAL_LITERATURE = 'suppliers’ literature in general, no one document (not verified)';

export const EACN_ESTERS =
  'Ontiveros J.F. et al., Classification of ester oils according to their EACN, J. Colloid Interface Sci. 403, 67-76 (2013) (not verified)';
export const EACN_POLAR =
  'Lukowicz T. et al., Rationalization and prediction of the EACN of polar hydrocarbon oils with COSMO-RS sigma-moments, Langmuir 31, 11220-11226 (2015) (not verified)';
export const EACN_FISH =
  'Queste S., Salager J.-L., Strey R., Aubry J.-M., The EACN scale for oil classification revisited thanks to fish diagrams, J. Colloid Interface Sci. 312, 98-107 (2007) (not verified)';

export const ATOMIC_WEIGHTS = 'computed from IUPAC standard atomic weights (abridged)';
export const CRC_HANDBOOK =
  'CRC Handbook of Chemistry and Physics, CRC Press, Boca Raton, dissociation constants of organic acids and bases (not verified)';
export const ADDITIVES_BOOK =
  'Smith J., Hong-Shum L., Food Additives Data Book (Blackwell 2003), benzoic acid entry';
export const PRESERVATIVE_CHEMISTRY =
  'Steinberg D.C., The chemistry of preservatives, 2005 SCC Annual Scientific Seminar, J. Cosmet. Sci. 56, 361-362 (2005)';
export const SORBIC_ARTICLE = 'an encyclopaedia’s article on sorbic acid';
export const STEARIC_MONOGRAPH =
  'USP35-NF30 and harmonised USP-NF (1 May 2016), Stearic Acid monograph; the European Pharmacopoeia gives the same';

/** The regulation whose recalled entries the limits quote; a limit is an example, not legal advice. */
export function annex(entry: string, read = false): string {
  return `Regulation (EC) No 1223/2009, Annex ${entry}${read ? '' : ' (not verified)'}: check the current text`;
}
