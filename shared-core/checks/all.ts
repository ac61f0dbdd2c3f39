import { allergenData } from './allergen-data';
import { antioxidant } from './antioxidant';
import { harmfulPairs } from './harmful-pairs';
import { nitrosamines } from './nitrosamines';
import { papers } from './papers';
import { powderLoad } from './powder-load';
import { smallLines } from './small-lines';
import { uvFilters } from './uv-filters';
import { withdrawnMaterial } from './withdrawn-material';
import { workingPh } from './working-ph';
import { archivedMaterial } from './archived-material';
import { classified } from './classified';
import { labelNotices } from './label-notices';
import { nano } from './nano';
import { preservativeFree } from './preservative-free';
import { preservativeSpectrum } from './preservative-spectrum';
import { sanitising } from './sanitising';
import { solubility } from './solubility';
import { supply } from './supply';
import { tooMuchBase } from './too-much-base';
import { userAndSite } from './user-and-site';
import { waterActivityOfFormula } from './water-activity';
import { cationicPartner } from './cationic-partner';
import { chargeConflict } from './charge-conflict';
import {
  FINDING_SEVERITIES,
  USUAL_CHECKS,
  type CheckChoices,
  type CheckInput,
  type CheckRule,
  type Finding,
} from './check';
import { chelator } from './chelator';
import { oneDisperses } from './disperses-in-water';
import { electrolyte } from './electrolyte';
import { empty } from './empty';
import { emulsifierToOil } from './emulsifier-to-oil';
import { emulsionType } from './emulsion-type';
import { formulaFacts } from './facts';
import { heatSensitive } from './heat-sensitive';
import { hlbMatch } from './hlb-match';
import { innerPhase } from './internal-phase';
import { law } from './law';
import { legalLimit } from './legal-limit';
import { missingMaterial } from './missing-material';
import { neutralising } from './neutralising';
import { noPreservative } from './no-preservative';
import { oneSidedCharge } from './one-sided-charge';
import { preservativePh } from './preservative-ph';
import { storageTemperatures } from './storage-temperatures';
import { total } from './total';
import { unmelted } from './unmelted';
import { usageRange } from './usage-range';
import { waterInOilPartners } from './water-in-oil-partners';
import { waterInOilSalt } from './water-in-oil-salt';

/** Every check, in the order in which equally serious findings are shown. Adding a rule: one file, one line here. */
export const CHECKS: readonly CheckRule[] = [
  empty,
  total,
  missingMaterial,
  law,
  legalLimit,
  classified,
  nitrosamines,
  userAndSite,
  sanitising,
  chargeConflict,
  neutralising,
  tooMuchBase,
  emulsionType,
  oneDisperses,
  hlbMatch,
  emulsifierToOil,
  waterInOilPartners,
  waterInOilSalt,
  innerPhase,
  cationicPartner,
  electrolyte,
  noPreservative,
  preservativePh,
  preservativeSpectrum,
  preservativeFree,
  waterActivityOfFormula,
  workingPh,
  harmfulPairs,
  usageRange,
  heatSensitive,
  unmelted,
  solubility,
  allergenData,
  antioxidant,
  withdrawnMaterial,
  archivedMaterial,
  papers,
  supply,
  nano,
  labelNotices,
  oneSidedCharge,
  chelator,
  storageTemperatures,
  powderLoad,
  uvFilters,
  smallLines,
];

/** Checks that say whether there is a formula at all: they cannot be switched off. */
const ALWAYS: ReadonlySet<string> = new Set([empty.id, total.id, missingMaterial.id]);

export function canBeSwitchedOff(rule: CheckRule): boolean {
  return !ALWAYS.has(rule.id);
}

/** The checks that are switched off, by a maker's choices. */
export function checksSwitchedOff({ checksOff }: CheckChoices): CheckRule[] {
  return CHECKS.filter((rule) => canBeSwitchedOff(rule) && checksOff.includes(rule.id));
}

/**
 * Runs the checks over a formula (draft or version): findings, most serious first. Never throws on a draft.
 *
 * @param choices which are switched off, and thresholds that the maker has set
 */
export function checkFormula(input: CheckInput, choices: CheckChoices = USUAL_CHECKS): Finding[] {
  const facts = formulaFacts(input);
  const off = new Set(checksSwitchedOff(choices));
  const findings = CHECKS.filter((rule) => !off.has(rule)).flatMap((rule) =>
    rule.judge(facts, choices.checkThresholds[rule.id] ?? rule.threshold?.usual ?? 0),
  );
  const rank = (finding: Finding): number => FINDING_SEVERITIES.indexOf(finding.severity);
  return findings.sort((a, b) => rank(a) - rank(b));
}
