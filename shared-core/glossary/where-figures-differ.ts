/** Where published figures disagree: what of, by how much, and what to do about it. */
export interface Difference {
  of: string;
  figures: string;
  advice: string;
}

/** As the reference tables of the project list them; each figure there has its source. */
export const WHERE_FIGURES_DIFFER: readonly Difference[] = [
  {
    of: 'Required HLB of one oil',
    figures:
      'Mineral oil o/w 10, 10.5 or 12; petrolatum 7 to 12; beeswax 9 to 16; lanolin 10 to 15; cetyl alcohol 13 to 16; dimethicone 5 to 11.',
    advice: 'Keep the source beside the figure, and try a series of ±1 HLB around what is computed.',
  },
  {
    of: 'HLB of one INCI name',
    figures:
      'PEG-40 stearate 16.9 to 17.3; PEG-40 hydrogenated castor oil 13 to 16; lecithin 4 to 9; sodium stearoyl lactylate 8 to 22.',
    advice: 'HLB belongs to a supplier’s grade: its data sheet takes precedence.',
  },
  {
    of: 'Griffin’s and Davies’ HLB',
    figures: 'They agree for soaps and sorbitan esters, not for ethoxylates: laureth-6 is 11.7 and 5.2.',
    advice: 'Keep to one of them through a blend.',
  },
  {
    of: 'HLB above 20',
    figures: 'Sodium lauryl sulfate 40 and poloxamer 188 29 are not on Griffin’s scale of 0 to 20.',
    advice: 'Do not average them.',
  },
  {
    of: 'The constants of HLD',
    figures: 'K 0.10 to 0.19 by head group; isopropyl myristate has an EACN of 7, or 10 to 13, by method.',
    advice: 'Confirm the inversion by trial.',
  },
  {
    of: 'Acid value of stearic acid',
    figures: 'The commercial mixture of C16 and C18 194 to 212, pure stearic acid 197.',
    advice: 'Use the certificate of the lot.',
  },
  {
    of: 'pKa of benzoic acid',
    figures: '4.16 to 4.20. At pH 4 the undissociated share is 59 to 61 %.',
    advice: 'The spread is small beside that of a pH reading.',
  },
  {
    of: 'Best pH of carbomer',
    figures: '6.5 to 7.0 and 6.5 to 7.5, in two editions from one maker.',
    advice: 'Go by pH and look, in portions.',
  },
  {
    of: 'Ageing by Q10',
    figures: '2 is an assumption; no standard prescribes one programme of storage.',
    advice: 'Three months at 45 °C are custom, and no proof of shelf life.',
  },
  {
    of: 'Published shelf lives',
    figures: 'One data set is printed with 28.6 months where its own readings give 28.4.',
    advice: 'Compute anew from the readings.',
  },
  {
    of: 'pH of citrate buffers',
    figures: 'A much-copied table lies 0.2 to 0.4 above what its own amounts give.',
    advice: 'Measure the pH.',
  },
  {
    of: 'Legal limits',
    figures:
      'They change with date and country; some are stated “as acid”, and must be converted from the salt.',
    advice: 'Check the text in force where you sell.',
  },
  {
    of: 'Ingredients at exactly 1 %',
    figures: 'The EU lets those below 1 % follow in any order, the US those of 1 % or less.',
    advice: 'Choose the form of the list for the country.',
  },
  {
    of: 'US sample factor of 48 packages',
    figures: 'Printed as 0.291, where the rule gives 0.290.',
    advice: 'The printed one decides at an inspection.',
  },
];
