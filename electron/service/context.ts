import type { RunJob } from './emulsions/run-job';
import type { ExportJob } from './exports/job';
import type { ImportAnswer, ImportJob } from './imports/import-job';
import type { MeetingAnswer, MeetingJob } from './meeting/meeting-job';
import type { SheetJob } from './sheets/job';
import type { Thread } from './threads/thread';
import type { LibrarySession } from './library/session';

/** All that the service needs from its host. Time and ids come from here, so that nothing below invents them. */
export interface ServiceContext {
  session: LibrarySession;
  now(): Date;
  /** A new UUIDv7. */
  newId(): string;
  /** Does the bench's long work; in the process itself when left out. */
  runJob?: RunJob;
  /** Prints sheets; in the process itself when left out. */
  printing?: Thread<SheetJob, Uint8Array>;
  /** Writes tables as files; in the process itself when left out. */
  exporting?: Thread<ExportJob, Uint8Array>;
  /** Plans and writes tables on their way in; in the process itself when left out. */
  importing?: Thread<ImportJob, ImportAnswer>;
  /** Compares and merges libraries; in the process itself when left out. */
  meeting?: Thread<MeetingJob, MeetingAnswer>;
}
