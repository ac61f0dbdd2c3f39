import { basename, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Problem } from '@core/problems/problem';
import { nameText } from '@core/quantities/text';
import { readSettings } from '@db/settings/settings';
import type { OpenLibrary } from '@db/library/open-library';
import { Hono } from 'hono';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { validBody, validQuery } from '../problems/validated';
import { keepOngoing } from '../record/keep-ongoing';
import { folderName } from './folder-name';
import { backupHolds } from './backup-holds';
import { listFolders } from './folder-list';

const creation = z.object({
  name: nameText('the library’s name', 80),
  kind: z.enum(['empty', 'demonstration']),
  /** The folder to make it in, by the token that it was listed with; where libraries are made when left out. */
  place: z.string().max(64).optional(),
});
const copying = z.object({ name: nameText('the copy’s name', 80) });
const lockHolder = z.object({ since: z.iso.datetime() });
const opening = z.object({ token: z.string().max(64) });

/** How long whoever asks which library is open waits for one that is being opened before it is told how far that is. */
const OPENING_TOLD_MS = 200;

type Counted = 'material' | 'formula' | 'batch' | "material WHERE status = 'archived'";

function count(context: ServiceContext, what: Counted): number {
  return context.session.current().library.get<{ n: number }>(`SELECT count(*) AS n FROM ${what}`)?.n ?? 0;
}

/** Whether the library can be changed and is whole on disk; in sentences, since a maker reads them. */
function safety(library: OpenLibrary) {
  const { readOnlyBecause, rewriteProblem, unfolded, changedOutside, opening, notes, unsaved } =
    library.status();
  return {
    /** Why nothing can be changed, or null. */
    readOnly: readOnlyBecause ? `${readOnlyBecause.message} ${readOnlyBecause.advice}` : null,
    locked: readOnlyBecause?.code === 'library-locked',
    /** Since when somebody else has it open, ISO 8601; null when nobody has or it is not known. */
    lockedSince: lockHolder.safeParse(readOnlyBecause?.facts.holder).data?.since ?? null,
    /** Why the file could not be rewritten; the changes are safe in the log meanwhile. */
    rewriteProblem: rewriteProblem ? `${rewriteProblem.message} ${rewriteProblem.advice}` : null,
    unfolded,
    /** It was open for writing here until somebody took it over. */
    takenOver: readOnlyBecause?.facts.takenOver === true,
    /** A change was refused when it was taken over or changed from outside; a copy saved now holds it. */
    unsaved,
    /** What opening found that is to be told, though it stops nothing. */
    notes: notes.map(({ message, advice }) => ({ title: message, detail: advice })),
    /** The files were changed by another program: nothing is written here any more. */
    changedOutside,
    /** Bytes of a change that was not whole on the disk when Stillroom last stopped. */
    droppedBytes: opening.tornBytes,
  };
}

/** What the first screen and the frame around every screen show. */
export function libraryStatus(context: ServiceContext) {
  const { session } = context;
  const opened = session.currentOrNull();
  const { trouble, startFolder, opening } = session;
  return {
    /** What is being opened just now and how much of it has been read, in bytes; null when nothing is. */
    opening: opening && { name: basename(opening.folder), done: opening.done, of: opening.of },
    /** Whoever reads all else after this, and hears of every later change, has missed nothing. */
    changes: session.changes.position(),
    open: opened && {
      id: opened.library.id,
      name: basename(opened.library.folder),
      folder: opened.library.folder,
      backupFolder:
        session.places.backupFolder(opened.library.folder) ?? join(opened.library.folder, 'backups'),
      /** Where a copy of every backup goes; null for nowhere. */
      backupCopies: session.places.backupCopies(opened.library.folder) ?? null,
      backupsAreWithin: session.places.backupFolder(opened.library.folder) === undefined,
      token: session.places.offer(opened.library.folder),
      ...safety(opened.library),
      /** When it was opened with a part of its log only: how many changes, what not, and where all of it is kept. */
      keptLog: opened.keptLog,
      /** With the first answer, so that a page that opens need not ask again. */
      settings: readSettings(opened.library),
      materials: count(context, 'material'),
      /** Of the materials; the list leaves them out until they are asked for. */
      archived: count(context, "material WHERE status = 'archived'"),
      formulas: count(context, 'formula'),
      batches: count(context, 'batch'),
    },
    recent: session.places.recent(),
    /** Where a new library is made. */
    documents: startFolder ?? session.places.documents,
    startName: startFolder ? basename(startFolder) : null,
    trouble: trouble && {
      title: trouble.message,
      detail: trouble.advice,
      code: trouble.code,
      facts: trouble.facts,
      /** The library that it is about. */
      folder: session.troubleFolder,
      /** When its log is the trouble: what of it the library can be opened with. */
      goodLog: session.goodLog(),
    },
  };
}

/** A folder that was listed before. @throws Problem `not-found` */
function chosenFolder(context: ServiceContext, token: string): string {
  const folder = context.session.places.folder(token);
  if (folder !== undefined) return folder;
  throw new Problem({
    code: 'not-found',
    title: 'This folder is not known here.',
    advice: 'Choose it again.',
  });
}

async function create(context: ServiceContext, wanted: z.infer<typeof creation>): Promise<void> {
  const { session } = context;
  const place = wanted.place === undefined ? session.places.documents : chosenFolder(context, wanted.place);
  const folder = session.startFolder ?? join(place, folderName(wanted.name));
  await session.create(folder, wanted.kind);
}

async function open(context: ServiceContext, token: string): Promise<void> {
  const folder = context.session.places.folder(token);
  if (!folder)
    throw new Problem({
      code: 'library-missing',
      title: 'This library is not known here.',
      advice: 'Choose it from the list, or start Stillroom with --library and its folder.',
    });
  await context.session.open(folder);
}

const folderToList = z.object({ token: z.string().max(64).optional() });
const backupPlace = z.object({ token: z.string().max(64).nullable() });

/** Keeps the backups in a folder that the maker chose (null: in the library's own), from now on. */
async function chooseBackupFolder(context: ServiceContext, token: string | null): Promise<void> {
  const { session } = context;
  const chosen = token === null ? null : chosenFolder(context, token);
  const { folder } = session.current().library;
  session.places.chooseBackupFolder(folder, chosen);
  await session.open(folder);
}

/** Copies every backup to a second folder that the maker chose (null: to none), from now on. */
async function chooseBackupCopies(context: ServiceContext, token: string | null): Promise<void> {
  const { session } = context;
  const chosen = token === null ? null : chosenFolder(context, token);
  const { folder } = session.current().library;
  session.places.chooseBackupCopies(folder, chosen);
  await session.open(folder);
  if (chosen !== null) await session.current().library.backUp();
}

const backupChoice = z.object({ name: z.string().max(200) });

async function restore(context: ServiceContext, name: string): Promise<void> {
  const { library } = context.session.current();
  // Only a name that the list gave: never a path from a page.
  const known = (await library.listBackups()).some((backup) => backup.name === name);
  if (!known)
    throw new Problem({
      code: 'not-found',
      title: 'This backup is not there any more.',
      advice: 'Choose another.',
    });
  await library.restore(name);
  context.session.refreshLists();
}

/** Backups: made, listed, gone back to, and where they are kept. */
function backupRoutes(context: ServiceContext) {
  return new Hono()
    .get('/', async (c) => c.json(await context.session.current().library.listBackups()))
    .post('/', async (c) => c.json(await context.session.current().library.backUp(), 201))
    .post('/restore', validBody(backupChoice), async (c) => {
      await restore(context, c.req.valid('json').name);
      return c.json(libraryStatus(context));
    })
    .put('/folder', validBody(backupPlace), async (c) => {
      await chooseBackupFolder(context, c.req.valid('json').token);
      return c.json(libraryStatus(context));
    })
    .put('/copies', validBody(backupPlace), async (c) => {
      await chooseBackupCopies(context, c.req.valid('json').token);
      return c.json(libraryStatus(context));
    })
    .get('/holds', validQuery(backupChoice), async (c) =>
      c.json(await backupHolds(context, c.req.valid('query').name)),
    );
}

export function libraryRoutes(context: ServiceContext) {
  return new Hono()
    .route('/backups', backupRoutes(context))
    .get('/folders', validQuery(folderToList), async (c) =>
      c.json(await listFolders(context.session.places, c.req.valid('query').token)),
    )
    .post('/take-over', async (c) => {
      await context.session.takeOver();
      return c.json(libraryStatus(context));
    })
    .post('/check', async (c) => {
      await context.session.currentOrNull()?.library.checkOutside();
      return c.json(libraryStatus(context));
    })
    .post('/reload', async (c) => {
      const { library } = context.session.current();
      // What is open here may be nowhere else: it is kept before what is on the disk is read.
      await library.keepAside();
      await context.session.open(library.folder);
      return c.json(libraryStatus(context));
    })
    .post('/copy', validBody(copying), async (c) => {
      const folder = join(context.session.places.documents, folderName(c.req.valid('json').name));
      // What cannot be written is copied all the same: a copy may be what saves it.
      await keepOngoing(context).catch(() => undefined);
      await context.session.current().library.saveCopyAs(folder);
      context.session.places.remember(folder, context.now().toISOString());
      return c.json(libraryStatus(context));
    })
    .post('/recover', async (c) => {
      await context.session.recover();
      return c.json(libraryStatus(context));
    })
    .post('/recover-log', async (c) => {
      await context.session.recoverLog();
      return c.json(libraryStatus(context));
    })
    .get('/', async (c) => {
      // Most libraries are there before anything else needs to be said.
      await Promise.race([context.session.ready(), setTimeout(OPENING_TOLD_MS)]);
      return c.json(libraryStatus(context));
    })
    .post('/create', validBody(creation), async (c) => {
      await create(context, c.req.valid('json'));
      return c.json(libraryStatus(context));
    })
    .post('/open', validBody(opening), async (c) => {
      await open(context, c.req.valid('json').token);
      return c.json(libraryStatus(context));
    })
    .post('/close', async (c) => {
      await context.session.close();
      return c.json(libraryStatus(context));
    });
}
