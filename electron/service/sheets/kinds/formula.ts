import { formulaContent } from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import type { FormulaSheetOptions, PrintedFormula } from '@core/sheets/formula-sheet';
import type { SheetRequestOf } from '@core/sheets/requests';
import { forSharing as shareable } from '@core/sheets/sharing';
import { readDecisions } from '@db/formulas/decisions';
import { readFormula } from '@db/formulas/drafts';
import { readVersion } from '@db/formulas/versions';
import type { OpenLibrary } from '@db/library/open-library';
import { readMaterials } from '@db/materials/materials';
import { readLaw } from '@db/limits/law';
import { found } from '../../problems/found';
import { kindOfSheet } from './kind';

interface Subject {
  formula: PrintedFormula;
  options: FormulaSheetOptions;
}

/** A version or the draft as it stands, with the library's law. */
export function printedFormula(
  library: OpenLibrary,
  request: Pick<SheetRequestOf<'formula'>, 'formulaId' | 'versionId'>,
): PrintedFormula {
  const law = readLaw(library);
  if (request.versionId !== null) {
    const { content, materials, ...version } = found(readVersion(library, request.versionId), 'version');
    return {
      content,
      materials,
      law,
      version: { ...version, decisions: readDecisions(library, version.id) },
    };
  }
  const content = formulaContent.parse(found(readFormula(library, request.formulaId), 'formula'));
  const ids = formulaLines(content).map((line) => line.materialId);
  return { content, materials: Object.fromEntries(readMaterials(library, ids)), law, version: null };
}

export const formula = kindOfSheet<'formula', Subject>('formula', {
  read(library, request) {
    const read = printedFormula(library, request);
    const { forSharing, tradeNames } = request;
    // The name of the file is shared along with it.
    const { code, name } = forSharing ? shareable(read.content, read.materials, tradeNames) : read.content;
    const which = read.version ? `version ${read.version.number}` : 'draft';
    return {
      subject: { formula: read, options: { forSharing, tradeNames } },
      name: [code, name, which, forSharing ? 'to share' : ''],
    };
  },
  async setting() {
    const { formulaSheet } = await import('@core/sheets/formula-sheet');
    return (subject, settings, printedAt) =>
      formulaSheet(subject.formula, subject.options, settings, printedAt);
  },
});
