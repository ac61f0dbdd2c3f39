import { NEVER_MADE } from '../demo/never-made';
import type { FormulaContent } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import type { Material } from '../materials/material';
import type { Hazard } from '../materials/vocabulary';

/**
 * What to say of each hazard where the material is weighed. Common practice, no source; the supplier's safety
 * data sheet and local rules go before any of it, and the sheet says so.
 */
export const HAZARD_CAUTIONS: Record<Hazard, string> = {
  caustic:
    'Caustic: face shield or goggles, gloves and apron; add it to cold water in portions, never water to it; it heats up; never into aluminium.',
  'strong acid': 'Strong acid: face shield or goggles, gloves and apron; add it to water, never water to it.',
  'fine dust': 'Fine dust: weigh out of draughts with a dust mask; keep from flames and sparks.',
  flammable: 'Flammable: no flames or hot plates near it; ventilate; add below its flash point.',
  sensitiser: 'Can sensitise: gloves; keep the undiluted material off the skin.',
  irritant: 'Irritant: goggles and gloves; rinse splashes at once.',
  'harmful undiluted': 'Harmful undiluted: goggles and gloves; measure exactly.',
  oxidiser: 'Oxidiser: keep from organic matter, reducing agents and heat.',
};

/** Said on every sheet that a product is made from. */
export const NOT_PROOF =
  'This sheet is not proof of safety or preservation: a qualified safety assessment, a challenge test and local law decide.';
/** Beside every hazard. Common practice; a safety data sheet goes before it. */
export const FIRST_AID =
  'First aid: rinse splashes at once with running water, eyes for 15 minutes; then see a doctor, with the safety data sheet in hand.';
/** Said where a hand weighs. */
export const DATA_SHEETS =
  'Read each supplier’s safety data sheet; it and local rules take precedence over this sheet.';

/** From here on a phase scalds; common practice, no source. */
const SCALDING_C = 50;

/** Said first on every sheet of a formula that was invented to show what Stillroom does; nothing of all others. */
export function neverMade({ notes }: Pick<FormulaContent, 'notes'>): string[] {
  return notes.includes(NEVER_MADE) ? [`Invented for demonstration, ${NEVER_MADE}.`] : [];
}

/** The cautions of a formula: one for each hazard with the materials that bring it, hot phases, and the limits of the sheet. */
export function formulaCautions(
  content: FormulaContent,
  materials: Readonly<Record<string, Material | undefined>>,
  nameOf: (material: Material) => string = (material) => material.tradeName,
): string[] {
  const used = [...new Set(formulaLines(content).map((line) => materials[line.materialId]))].filter(
    (one): one is Material => one !== undefined,
  );
  const said: string[] = [];
  for (const [hazard, caution] of Object.entries(HAZARD_CAUTIONS)) {
    const bring = used.filter((one) => one.hazards.includes(hazard as Hazard)).map(nameOf);
    // "Fine dust: weigh out of draughts" names the materials between the hazard and what to do.
    if (bring.length > 0) said.push(caution.replace(':', () => ` (${[...new Set(bring)].join(', ')}):`));
  }
  const heat = [...content.phases, ...content.steps].map((one) => one.temperatureC ?? 0);
  if (heat.some((celsius) => celsius >= SCALDING_C))
    said.push('Hot oil and water phases scald: goggles, gloves, closed shoes; pour slowly, away from you.');
  if (used.some((one) => one.hazards.length > 0)) said.push(FIRST_AID);
  const silent = used.filter((one) => one.hazards.length === 0).length;
  if (silent > 0)
    said.push(
      `${silent === 1 ? 'For one material no hazard is' : `For ${silent} materials no hazards are`} recorded, which proves nothing: read the safety data sheet.`,
    );
  if (used.some((one) => one.functions.includes('uv filter')))
    said.push('UV filters: protection is measured by a licensed test on the product, never from a formula.');
  return [...neverMade(content), ...said, DATA_SHEETS, NOT_PROOF];
}
