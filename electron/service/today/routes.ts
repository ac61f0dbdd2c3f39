import { readAttention } from '@db/today/attention';
import { readSettings } from '@db/settings/settings';
import { Hono } from 'hono';
import type { ServiceContext } from '../context';
import { unfinishedDrafts } from './unfinished';

/** A price is asked for anew after a year; common practice, no source. */
const PRICE_YEARS = 1;
/** Safety data sheets are reviewed every five years at least: Model WHS Regulations (Australia), reg. 330 (from memory). */
const DATA_SHEET_YEARS = 5;
/** Time to ask a supplier for the next certificate; common practice, no source. */
const NOTICE_DAYS = 60;

/** A backup that nobody has opened is a hope; common practice, no source. */
const BACKUP_YEARS = 1;

/** Since when no backup was tried, where that is more than a year; null where one was, or the library is younger. */
function backupUntriedSince(context: ServiceContext, yearAgo: string): string | null {
  const { library } = context.session.current();
  const made =
    library.get<{ at: string }>('SELECT created_at AS at FROM library_meta')?.at.slice(0, 10) ?? '';
  const since = readSettings(library).backupTriedOn || made;
  return since !== '' && since < yearAgo ? since : null;
}

/** A day so many years and days from a moment, ISO 8601. */
function dayFrom(moment: Date, years: number, days = 0): string {
  const at = new Date(moment);
  at.setUTCFullYear(at.getUTCFullYear() + years);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}

/** What of the library needs a look today. */
export function todayRoutes(context: ServiceContext) {
  const { session } = context;
  return new Hono()
    .get('/', (c) => {
      const now = context.now();
      const days = {
        today: dayFrom(now, 0),
        pricesFrom: dayFrom(now, -PRICE_YEARS),
        dataSheetsFrom: dayFrom(now, -DATA_SHEET_YEARS),
        validPast: dayFrom(now, 0, NOTICE_DAYS),
      };
      return c.json(readAttention(session.current().library, days));
    })
    .get('/backup', (c) => {
      /** Since when no backup was opened and compared; null while that is less than a year. */
      const untriedSince = backupUntriedSince(context, dayFrom(context.now(), -BACKUP_YEARS));
      return c.json({ untriedSince });
    })
    .get('/unfinished', async (c) => {
      const onDay = context.now().toISOString().slice(0, 10);
      return c.json(await unfinishedDrafts(session.current().library, onDay));
    });
}
