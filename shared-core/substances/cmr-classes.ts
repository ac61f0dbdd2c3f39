/** What a substance may be classed as: carcinogenic, mutagenic or toxic to reproduction; or by a maker as not classed. */
export const CMR_CLASSES = ['1A or 1B', '2', '2, as a powder breathed in', 'not classed'] as const;
export type CmrClass = (typeof CMR_CLASSES)[number];
