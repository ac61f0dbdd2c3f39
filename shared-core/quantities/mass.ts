/** Masses are integers in milligrams. One gram and one kilogram in that unit. */
export const MG_PER_G = 1_000;
export const MG_PER_KG = 1_000_000;
/** The largest batch Stillroom plans: 10 tonnes; the sheet is made for a bench or a small plant. */
export const LARGEST_BATCH_MG = 10_000 * MG_PER_KG;
