import { formulaContent } from '@core/formulas/formula';
import { formulaLines } from '@core/formulas/shares';
import { reformulateWish } from '@core/reformulate/wish';
import type { ReformulateResult } from '@core/reformulate/reformulate';
import { readFormula } from '@db/formulas/drafts';
import { readLaw } from '@db/limits/law';
import { idsWithFunction, readMaterials } from '@db/materials/materials';
import { readSettings } from '@db/settings/settings';
import { FUNCTIONS } from '@core/materials/vocabulary';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { runInline } from '../emulsions/run-job';
import { overShelf, type WhichMaterials } from '../shelf/over-shelf';
import { found } from '../problems/found';

/** What is asked of a formula; the library's materials and law are read here. */
export const reformulateRequest = z.object({ wish: reformulateWish });

const everyFunction: WhichMaterials = (library) => idsWithFunction(library, FUNCTIONS);

/**
 * The nearest formula to a draft that meets what is asked, from the library's own shelf.
 * @throws Problem as `reformulate`, and `cancelled` when the asker has gone
 */
export async function reformulateFromLibrary(
  context: ServiceContext,
  formulaId: string,
  { wish }: z.infer<typeof reformulateRequest>,
  signal: AbortSignal,
): Promise<ReformulateResult> {
  const { library } = context.session.current();
  const content = formulaContent.parse(found(readFormula(library, formulaId), 'formula'));
  const own = readMaterials(
    library,
    formulaLines(content).map((line) => line.materialId),
  );
  const input = {
    content,
    materials: [...own.values()],
    law: readLaw(library),
    onDay: context.now().toISOString().slice(0, 10),
    currency: readSettings(library).currency,
    wish,
  };
  return overShelf(library, everyFunction, (shelf) =>
    (context.runJob ?? runInline)({ kind: 'reformulate', shelf, input }, signal),
  );
}
