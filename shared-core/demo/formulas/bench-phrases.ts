/** Cautions and methods that several demonstration formulas share. */
export const HOT_PHASES =
  'Hot oil and water burn: gloves, goggles, vessels no more than two thirds full, no naked flame.';
export const COOLING =
  'Still hot: gloves; keep hands, hair and sleeves from the stirrer, and switch it off before scraping.';
export const ACID_LAST =
  'The acid irritates and burns eyes undiluted: goggles and gloves; dilute it by adding it to water.';
export const DUST = 'Fine dust: extraction or a dust mask; wipe up spills, they are slippery when wet.';
export const NEAT_PRESERVATIVE =
  'Undiluted preservative and fragrance harm eyes and skin: goggles and gloves.';
export const NEAT_BASE =
  'Corrosive: face shield or goggles, gloves; add it to the batch in portions, never all at once; never in aluminium. Splashes: rinse with running water, eyes for 15 minutes, then see a doctor.';
export const VISCOMETER = 'Rotational viscometer, spindle 5, 20 rpm, 25 °C, after 24 h';
export const MICROBIOLOGY =
  'Aerobic mesophilic count at most 1,000 CFU per g; specified pathogens absent in 1 g (ISO 17516:2014; not verified: check the current text)';
