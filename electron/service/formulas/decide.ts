import { judgedFindings } from '@core/checks/accepted';
import { checkFormula } from '@core/checks/all';
import { standingOf, type EnteredDecision, type VersionDecision } from '@core/formulas/decision';
import type { FormulaVersion } from '@core/formulas/formula';
import { Problem } from '@core/problems/problem';
import { insertDecision, readDecisions } from '@db/formulas/decisions';
import { readVersion } from '@db/formulas/versions';
import { readLaw } from '@db/limits/law';
import { readSettings } from '@db/settings/settings';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import { tellChange } from '../record/tell-change';

/** Refuses to approve what the checks say must be put right first. @throws Problem invalid-input, naming it */
function refuseUnmended(context: ServiceContext, { content, materials }: FormulaVersion, day: string): void {
  const { library } = context.session.current();
  const input = {
    content,
    materials: new Map(Object.entries(materials)),
    law: readLaw(library),
    onDay: day,
  };
  const { open } = judgedFindings(checkFormula(input, readSettings(library)), content);
  const stops = open.filter(({ severity }) => severity === 'stop');
  const [first] = stops;
  if (!first) return;
  throw new Problem({
    code: 'invalid-input',
    title: `This version cannot be approved: ${first.title}.`,
    advice: `${stops.length > 1 ? `${stops.length - 1} more must be fixed too. ` : ''}Correct it in the draft and record another version; this one stays as it is.`,
  });
}

/**
 * Approves or withdraws a recorded version. What was decided before stays.
 * @throws Problem not-found, invalid-input where the checks find what must be put right first, in-use where it was decided so already
 */
export function decideOn(
  context: ServiceContext,
  versionId: string,
  entered: EnteredDecision,
): VersionDecision[] {
  const { library, lists } = context.session.current();
  const version = found(readVersion(library, versionId), 'version');
  const before = readDecisions(library, versionId);
  const standing = standingOf(before);
  if (standing === 'withdrawn')
    throw new Problem({
      code: 'in-use',
      title: `Version ${version.number} is withdrawn, and stays so.`,
      advice: 'Start a new draft from it, correct what was wrong, and record another version.',
    });
  if (standing === entered.decision)
    throw new Problem({
      code: 'in-use',
      title: `Version ${version.number} is approved already.`,
      advice: 'Nothing was changed.',
    });
  if (entered.decision === 'approved')
    refuseUnmended(context, version, context.now().toISOString().slice(0, 10));
  const made = { ...entered, at: context.now().toISOString() };
  library.transaction((tx) => insertDecision(tx, versionId, made));
  // Its formula’s list shows where the newest version stands.
  lists.changed('formulas', version.formulaId);
  tellChange(context, 'version', { id: versionId, revision: before.length + 2 });
  return [...before, made];
}
