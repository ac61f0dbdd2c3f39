import { sheetFileName, type SheetKind, type SheetRequest } from '@core/sheets/requests';
import type { OpenLibrary } from '@db/library/open-library';
import { batch } from './batch';
import { calculation } from './calculation';
import { comparison } from './comparison';
import { exposure } from './exposure';
import { file } from './file';
import { formula } from './formula';
import { glossary } from './glossary';
import type { KindOfSheet } from './kind';
import { label } from './label';
import { material } from './material';
import { part } from './part';
import { trials } from './trials';
import { working } from './working';

/** How each kind of sheet is read and set. A kind without its entry here does not compile. */
export const KINDS: { [Kind in SheetKind]: KindOfSheet<Kind, unknown> } = {
  material,
  formula,
  label,
  exposure,
  file,
  part,
  batch,
  comparison,
  calculation,
  working,
  glossary,
  trials,
};

/** What a sheet is of, as plain data; only its kind looks into it. */
export interface SheetSubject {
  kind: SheetKind;
  of: unknown;
}

/** Reads from the library what a sheet is of. @throws Problem `not-found` */
export async function readSubject(
  library: OpenLibrary,
  request: SheetRequest,
): Promise<{ subject: SheetSubject; fileName: string }> {
  // The request is of this very kind, which the types cannot follow through the lookup.
  const kind = KINDS[request.kind] as KindOfSheet<SheetKind, unknown>;
  const { subject, name } = await kind.read(library, request);
  return { subject: { kind: request.kind, of: subject }, fileName: sheetFileName(request.kind, name) };
}
