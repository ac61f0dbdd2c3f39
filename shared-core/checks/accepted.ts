import { ACCEPTABLE, MOST_SAID, type AcceptedFinding } from '../formulas/accepted-finding';
import type { FormulaContent } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import { FINDING_SEVERITIES, type Finding } from './check';

/** A finding that was accepted, with the reason. */
export interface Accepted {
  finding: Finding;
  acceptance: AcceptedFinding;
}

/** What the checks found, divided by what the maker has accepted. */
export interface JudgedFindings {
  /** Still to be looked at, most serious first. */
  open: Finding[];
  accepted: Accepted[];
  /** Accepted once, and found no more, or found more serious than it was. */
  past: AcceptedFinding[];
}

/** The materials that a finding is about, each once, in a fixed order; none when it is about the whole formula. */
function materialsOf(finding: Finding, content: FormulaContent): string[] {
  const lines = new Map(formulaLines(content).map((line) => [line.id, line.materialId]));
  return [...new Set(finding.lines.flatMap((id) => lines.get(id) ?? []))].sort();
}

/** What a title says but for its figures, which move while a formula is written. */
const wordsOf = (title: string): string => title.slice(0, MOST_SAID).replace(/[\d.,]+/g, '#');

const rank = (severity: Finding['severity']): number => FINDING_SEVERITIES.indexOf(severity);

/** Whether a finding may be let stand with a reason. */
export function isAcceptable(finding: Finding): boolean {
  return ACCEPTABLE.some((severity) => severity === finding.severity);
}

/** Divides what the checks found in a formula by what its maker has accepted. */
export function judgedFindings(findings: readonly Finding[], content: FormulaContent): JudgedFindings {
  const judged: JudgedFindings = { open: [], accepted: [], past: [] };
  const left = new Set(content.accepted);
  for (const finding of findings) {
    const materials = materialsOf(finding, content).join();
    const acceptance = [...left].find(
      (one) =>
        one.ruleId === finding.ruleId &&
        wordsOf(one.says) === wordsOf(finding.title) &&
        [...one.materialIds].sort().join() === materials &&
        rank(finding.severity) >= rank(one.severity),
    );
    if (!acceptance) judged.open.push(finding);
    else {
      judged.accepted.push({ finding, acceptance });
      left.delete(acceptance);
    }
  }
  return { ...judged, past: [...left] };
}

/**
 * What is kept when a maker accepts a finding.
 *
 * @returns null for a finding that must be put right
 */
export function acceptanceOf(
  finding: Finding,
  content: FormulaContent,
  given: Pick<AcceptedFinding, 'id' | 'reason' | 'by' | 'on'>,
): AcceptedFinding | null {
  const severity = ACCEPTABLE.find((one) => one === finding.severity);
  if (!severity) return null;
  const says = finding.title.slice(0, MOST_SAID);
  return { ...given, ruleId: finding.ruleId, materialIds: materialsOf(finding, content), severity, says };
}
