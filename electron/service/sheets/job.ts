import type { Settings } from '@core/settings/settings';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { KINDS, type SheetSubject } from './kinds/all';
import { renderSheet } from './render';

/** A sheet to be set and printed. */
export interface SheetJob {
  subject: SheetSubject;
  settings: Settings;
  /** ISO 8601 UTC; printed on the sheet and written into the file. */
  printedAt: string;
  replaceUnprintable: boolean;
}

/** Sets a sheet as data for the printer. */
export async function setSheet({ subject, settings, printedAt }: SheetJob): Promise<SheetDefinition> {
  const set = await KINDS[subject.kind].setting();
  return set(subject.of, settings, printedAt);
}

/** Sets and prints a sheet as PDF, in this thread. @throws Problem `unprintable-text` */
export async function printSheet(job: SheetJob): Promise<Uint8Array> {
  const { replaceUnprintable } = job;
  return renderSheet(await setSheet(job), { now: new Date(job.printedAt), replaceUnprintable });
}
