import type { SheetDefinition } from '@core/sheets/kit/definition';
import type { SheetKind, SheetRequestOf } from '@core/sheets/requests';
import type { Settings } from '@core/settings/settings';
import type { OpenLibrary } from '@db/library/open-library';

/** Sets a subject as data for the printer. */
export type SetSheet<Subject> = (subject: Subject, settings: Settings, printedAt: string) => SheetDefinition;

/** One kind of sheet: what it is read from, and how it is set. */
export interface KindOfSheet<Kind extends SheetKind, Subject> {
  /**
   * Reads from the library what the sheet is of, as plain data that can cross to another thread, and what tells its
   * file apart by name. @throws Problem `not-found`
   */
  read(
    library: OpenLibrary,
    request: SheetRequestOf<Kind>,
  ): Promise<ReadForSheet<Subject>> | ReadForSheet<Subject>;
  /** Loaded only where sheets are set: plots and the printer take their time. */
  setting(): Promise<SetSheet<Subject>>;
}

export interface ReadForSheet<Subject> {
  subject: Subject;
  /** Such as the batch number and the formula's name. */
  name: readonly string[];
}

/** A kind as one of many: its reader and its setting agree on the subject, which nobody else looks into. */
export function kindOfSheet<Kind extends SheetKind, Subject>(
  _kind: Kind,
  described: KindOfSheet<Kind, Subject>,
): KindOfSheet<Kind, unknown> {
  return described as KindOfSheet<Kind, unknown>;
}
