import { enteredFormula, type FormulaVersion } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import { formatPercent, type Region } from '@core/locale/numbers';
import { Problem } from '@core/problems/problem';
import { WHOLE_PPM } from '@core/quantities/share';
import { lineText } from '@core/quantities/text';
import { readFormula } from '@db/formulas/drafts';
import { insertVersion, listVersions, type VersionSummary } from '@db/formulas/versions';
import { readMaterials } from '@db/materials/materials';
import { readSettings } from '@db/settings/settings';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import { invalidInput } from '../problems/validated';
import { tellChange } from '../record/tell-change';

export const versionRequest = z.object({ reason: lineText(500), recordedBy: lineText(120) });

/** Why a draft cannot be recorded yet, or null: a version is a whole, so its lines make exactly 100 %. */
function notYetWhole(
  content: FormulaVersion['content'],
  region: Region,
): { title: string; advice: string } | null {
  const shares = formulaShares(content);
  if (formulaLines(content).length === 0)
    return { title: 'An empty formula cannot be recorded.', advice: 'Add its lines first.' };
  if ([...shares.byLine.values()].some((ppm) => ppm < 0))
    return {
      title: `The lines add up to more than 100 %: nothing is left for the q.s. line.`,
      advice: `Remove ${formatPercent(-Math.min(...shares.byLine.values()), region)} from the other lines.`,
    };
  if (shares.totalPpm !== WHOLE_PPM)
    return {
      title: `The lines add up to ${formatPercent(shares.totalPpm, region)}, not 100 %.`,
      advice: 'Correct the shares, or mark one line “q.s. to 100”. Your draft is saved as it is.',
    };
  return null;
}

/** Freezes a draft, and its materials' values of this moment, as the formula's next version. */
export function recordVersion(
  context: ServiceContext,
  formulaId: string,
  request: z.infer<typeof versionRequest>,
): VersionSummary {
  const { library, lists } = context.session.current();
  const draft = found(readFormula(library, formulaId), 'formula');
  const read = enteredFormula.safeParse(draft);
  if (!read.success) throw invalidInput(read.error);
  const content = read.data;
  const fault = notYetWhole(content, readSettings(library).languageRegion);
  if (fault) throw new Problem({ code: 'invalid-input', ...fault });
  const shares = formulaShares(content);
  const materials = readMaterials(
    library,
    formulaLines(content).map((line) => line.materialId),
  );
  const version: FormulaVersion = {
    ...request,
    id: context.newId(),
    formulaId,
    number: (listVersions(library, formulaId)[0]?.number ?? 0) + 1,
    recordedAt: context.now().toISOString(),
    content: {
      ...content,
      phases: content.phases.map((phase) => ({
        ...phase,
        lines: phase.lines.map((line) => ({ ...line, ppm: shares.byLine.get(line.id) ?? line.ppm })),
      })),
    },
    materials: Object.fromEntries(materials),
  };
  library.transaction((tx) => insertVersion(tx, version));
  // Its formula’s list shows the number of the newest version.
  lists.changed('formulas', formulaId);
  tellChange(context, 'version', { id: version.id, revision: 1 });
  const { id, number, recordedAt, recordedBy, reason } = version;
  return { id, formulaId, number, recordedAt, recordedBy, reason, decisions: [], standing: 'recorded' };
}
