import { COMMON_PRACTICE, type Source } from '../working/working';

/** A source that was not looked at again: it is shown as not verified. */
export const book = (text: string): Source => ({ text, basis: 'memory' });

/** The books, standards and laws that the glossary follows. */
export const PRACTICE: Source = COMMON_PRACTICE;
export const GOLD_BOOK = book('IUPAC Compendium of Chemical Terminology, 2nd ed., Blackwell, Oxford 1997');
export const ROSEN = book('Rosen M.J., Surfactants and Interfacial Phenomena, 3rd ed., Wiley, Hoboken 2004');
export const SINKO = book(
  'Sinko P.J. (ed.), Martin’s Physical Pharmacy and Pharmaceutical Sciences, 5th ed., Lippincott, Baltimore 2006',
);
export const AULTON = book(
  'Aulton M.E. (ed.), Pharmaceutics: The Science of Dosage Form Design, 2nd ed., Churchill Livingstone, Edinburgh 2002',
);
export const EXCIPIENTS = book(
  'Rowe R.C., Sheskey P.J., Quinn M.E. (eds), Handbook of Pharmaceutical Excipients, 6th ed., Pharmaceutical Press, London 2009',
);
export const ECCLESTON = book(
  'Eccleston G.M., Application of emulsion stability theories to mobile and semisolid O/W emulsions, Cosmet. Toiletries 101 (11), 73-92 (1986)',
);
export const PERRIN = book(
  'Perrin D.D., Dempsey B., Buffers for pH and Metal Ion Control, Chapman and Hall, London 1974',
);
export const USP = book('United States Pharmacopeia, general chapters');
export const REGULATION = book(
  'Regulation (EC) No 1223/2009 on cosmetic products, Brussels 2009: check the current text',
);
export const GMP = book('ISO 22716:2007, Cosmetics, Good Manufacturing Practices, Geneva 2007');
export const SMILES_SPECIFICATION = book('OpenSMILES specification, version 1.0, 2016');
