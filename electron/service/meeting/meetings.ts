import { basename, join } from 'node:path';
import type { Decisions } from '@core/merging/choice';
import { Problem } from '@core/problems/problem';
import { SETTINGS } from '@core/settings/noun';
import { Attachments } from '@db/library/attachments/attachments';
import { nodeFileSystem } from '@db/library/file/file-system';
import { changeSettings, readSettings } from '@db/settings/settings';
import type { Merged } from '@db/merging/apply';
import type { MetField } from '@db/merging/meeting';
import type { ServiceContext } from '../context';
import { folderName } from '../library/folder-name';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';
import {
  performMeeting,
  type Applied,
  type MeetingAnswer,
  type MeetingJob,
  type Met,
  type MetRows,
  type Other,
  type RowsAsked,
} from './meeting-job';

/** Where the other comes from, and the files that are attached there. */
interface Source {
  kind: 'library' | 'backup' | 'file';
  name: string;
  /** The last change of ours when the two met. */
  sequence: number;
  libraryId: string;
  attachment(sha: string): Promise<Uint8Array | null>;
}

/** The last merge, so that it can be taken back as one. */
interface Done {
  libraryId: string;
  backup: string;
  sequence: number;
}

export interface MergeDone {
  merged: Merged;
  /** Whether something was written, and so can be taken back. */
  written: boolean;
}

function changedSince(): Problem {
  return new Problem({
    code: 'conflict',
    title: 'Something was changed in this library since the two were compared.',
    advice: 'Compare them once more, then take it in. Nothing was changed.',
  });
}

/** Meetings of the open library with another one, a pack, a document or a backup. The last one is held. */
export class Meetings {
  private readonly sources = new Map<string, Source>();
  private done: Done | null = null;

  constructor(private readonly context: ServiceContext) {}

  private run<A extends MeetingAnswer>(job: MeetingJob, signal?: AbortSignal): Promise<A> {
    return (this.context.meeting?.run(job, signal) ?? performMeeting(job)) as Promise<A>;
  }

  private async begin(
    other: Other,
    source: Pick<Source, 'kind' | 'attachment'>,
    signal: AbortSignal,
  ): Promise<Met & { id: string; kind: Source['kind'] }> {
    const { library } = this.context.session.current();
    const { bytes, sequence } = await library.snapshot();
    const id = this.context.newId();
    const at = this.context.now().toISOString();
    const met = await this.run<Met>({ kind: 'begin', meeting: id, ours: bytes, other, at }, signal);
    this.sources.clear();
    this.sources.set(id, { ...source, name: met.title, sequence, libraryId: library.id });
    return { id, kind: source.kind, ...met };
  }

  /** @param folder one that the maker chose */
  async withLibrary(folder: string, signal: AbortSignal) {
    const { session } = this.context;
    if (folder === session.current().library.folder)
      throw new Problem({
        code: 'conflict',
        title: 'This is the library that is open.',
        advice: 'Choose another one to compare it with.',
      });
    const other = await session.look(folder);
    try {
      const { bytes } = await other.snapshot();
      const kept = new Attachments(
        nodeFileSystem,
        folder,
        () => undefined,
        () => undefined,
      );
      const attachment = (sha: string) => kept.get(sha).catch(() => null);
      return await this.begin(
        { kind: 'library', bytes, name: basename(folder) },
        { kind: 'library', attachment },
        signal,
      );
    } finally {
      await other.close();
    }
  }

  /** Only a name that the list of backups gave. */
  async withBackup(name: string, signal: AbortSignal) {
    const { library } = this.context.session.current();
    const bytes = await library.readBackup(name);
    this.noteTried();
    const made = (await library.listBackups()).find((one) => one.name === name)?.madeAt ?? '';
    const other: Other = {
      kind: 'library',
      bytes,
      name: `the backup of ${made.slice(0, 16).replace('T', ' ')} UTC`,
    };
    return this.begin(other, { kind: 'backup', attachment: () => Promise.resolve(null) }, signal);
  }

  /** Today reminds of trying a backup once a year. */
  private noteTried(): void {
    const { library } = this.context.session.current();
    const today = this.context.now().toISOString().slice(0, 10);
    const before = readSettings(library);
    if (library.readOnly || before.backupTriedOn === today) return;
    library.transaction((tx) =>
      changeSettings(tx, { ...before, backupTriedOn: today }, doingNow(this.context)),
    );
    tellChange(this.context, SETTINGS.kind, { id: SETTINGS.kind, revision: 1 });
  }

  async withFile(bytes: Uint8Array, name: string, signal: AbortSignal) {
    const id = () => [...this.sources.keys()].at(-1) ?? '';
    const attachment = (sha: string) =>
      this.run<Uint8Array | null>({ kind: 'attachment', meeting: id(), sha });
    return this.begin({ kind: 'file', bytes, name }, { kind: 'file', attachment }, signal);
  }

  private source(id: string): Source {
    const source = this.sources.get(id);
    if (source && source.libraryId === this.context.session.current().library.id) return source;
    throw new Problem({
      code: 'not-found',
      title: 'What was compared is no longer held here.',
      advice: 'Choose it once more. Nothing was changed.',
    });
  }

  async rows(meeting: string, decisions: Decisions, ask: RowsAsked): Promise<MetRows> {
    this.source(meeting);
    return this.run({ kind: 'rows', meeting, decisions, ask });
  }

  async fields(meeting: string, key: string): Promise<MetField[]> {
    this.source(meeting);
    const { languageRegion: region } = readSettings(this.context.session.current().library);
    return this.run({ kind: 'fields', meeting, key, region });
  }

  /** Carries out what was decided, all or nothing. @throws Problem conflict where ours was changed since */
  async apply(meeting: string, decisions: Decisions): Promise<MergeDone> {
    const source = this.source(meeting);
    const { library } = this.context.session.current();
    if (library.sequence !== source.sequence) throw changedSince();
    const why = source.kind === 'backup' ? `taken from ${source.name}` : `merged from “${source.name}”`;
    const files = await this.filesToCome(meeting, decisions, source);
    const doing = doingNow(this.context, why.slice(0, 200));
    const { bytes, merged } = await this.run<Applied>({ kind: 'apply', meeting, decisions, doing });
    this.sources.delete(meeting);
    const counts = Object.values(merged).filter((value) => typeof value === 'number');
    if (counts.every((value) => value === 0) && !merged.entered) return { merged, written: false };
    for (const file of files) await library.attachments.put(file);
    const backup = await library.takeState(bytes, source.sequence, 'merge');
    this.context.session.refreshLists();
    this.done = { libraryId: library.id, backup: backup.name, sequence: library.sequence };
    return { merged, written: true };
  }

  /** The attached files of what would be taken, that are not here yet. */
  private async filesToCome(meeting: string, decisions: Decisions, source: Source): Promise<Uint8Array[]> {
    const { library } = this.context.session.current();
    const names = await this.run<string[]>({ kind: 'files', meeting, decisions });
    const files: Uint8Array[] = [];
    for (const sha of names) {
      if (
        await library.attachments.get(sha).then(
          () => true,
          () => false,
        )
      )
        continue;
      const bytes = await source.attachment(sha);
      if (bytes) files.push(bytes);
    }
    return files;
  }

  /** Takes the last merge back, as long as nothing was changed after it. @throws Problem conflict, not-found */
  async takeBack(): Promise<void> {
    const { library } = this.context.session.current();
    const { done } = this;
    if (!done || done.libraryId !== library.id)
      throw new Problem({
        code: 'not-found',
        title: 'There is nothing here to undo.',
        advice: 'Compare the library with a backup on its page, and restore what you want from there.',
      });
    if (library.sequence !== done.sequence)
      throw new Problem({
        code: 'conflict',
        title: 'Something was changed after the two were merged.',
        advice:
          'Undoing the merge would lose that. On the library’s page, compare with the backup made before the merge, and restore single records from it.',
      });
    await library.restore(done.backup);
    this.done = null;
    this.context.session.refreshLists();
  }

  /** Makes a library of its own of what was met, and opens it. */
  async beside(meeting: string, name: string): Promise<void> {
    const source = this.source(meeting);
    const { session } = this.context;
    const folder = join(session.places.documents, folderName(name));
    await session.makeBeside(folder, async (fresh) => {
      const { bytes: empty, sequence } = await fresh.snapshot();
      const filled = await this.run<Uint8Array>({ kind: 'beside', meeting, empty });
      await fresh.takeState(filled, sequence, 'merge');
      for (const sha of await this.run<string[]>({ kind: 'files', meeting, decisions: null })) {
        const bytes =
          source.kind === 'backup'
            ? await session
                .current()
                .library.attachments.get(sha)
                .catch(() => null)
            : await source.attachment(sha);
        if (bytes) await fresh.attachments.put(bytes);
      }
    });
    await session.open(folder);
  }

  async end(meeting: string): Promise<void> {
    this.sources.delete(meeting);
    await this.run({ kind: 'end', meeting });
  }
}
