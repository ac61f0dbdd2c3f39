import { setImmediate } from 'node:timers/promises';
import { formulaContent } from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import { readFormula } from '@db/formulas/drafts';
import { unrecordedDrafts } from '@db/formulas/unrecorded';
import type { OpenLibrary } from '@db/library/open-library';
import { readLaw } from '@db/limits/law';
import { readMaterials } from '@db/materials/materials';
import { readSettings } from '@db/settings/settings';
import type { Named } from '@db/today/attention';

/** A draft that no version holds yet, with how many findings its checks have, notes left out. */
export interface Unfinished extends Named {
  findings: number;
}

/** The drafts last changed, which are what is being worked on. */
const LOOKED_AT = 12;

/**
 * The unfinished drafts that have findings, the last changed first. The process is let go between two of them.
 * @param onDay ISO 8601, for the limits of law
 */
export async function unfinishedDrafts(library: OpenLibrary, onDay: string): Promise<Unfinished[]> {
  const ids = unrecordedDrafts(library, LOOKED_AT);
  if (ids.length === 0) return [];
  const [{ checkFormula }, { judgedFindings }] = await Promise.all([
    import('@core/checks/all'),
    import('@core/checks/accepted'),
  ]);
  const law = readLaw(library);
  const choices = readSettings(library);
  const unfinished: Unfinished[] = [];
  for (const id of ids) {
    await setImmediate();
    const draft = readFormula(library, id);
    // Deleted meanwhile.
    if (!draft) continue;
    const content = formulaContent.parse(draft);
    const materials = readMaterials(
      library,
      formulaLines(content).map((line) => line.materialId),
    );
    const { open } = judgedFindings(checkFormula({ content, materials, law, onDay }, choices), content);
    const findings = open.filter((one) => one.severity !== 'note').length;
    if (findings > 0) unfinished.push({ id, name: draft.name, findings });
  }
  return unfinished;
}
