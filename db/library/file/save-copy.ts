import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { diskProblem } from './disk-problem';
import { Engine } from '../sql/engine';
import { isMissing, type FileSystem } from './file-system';
import { readMeta, writeId } from './meta';
import type { Settled } from '../options';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { sha256Of, writeWholeFile } from './whole-file';
import { encodeHeader, type LoggedStatement } from '../log/log-format';
import { withRoom } from '../log/log-room';

/**
 * Writes the library as it is in memory into another folder, under an id of its own, attachments included, and with
 * the change that could not be saved where it is.
 * Throws Problem conflict where there is a library already.
 */
export async function saveCopy(
  settled: Settled,
  bytes: Uint8Array,
  unsaved: readonly LoggedStatement[],
  target: string,
): Promise<void> {
  const { fileSystem: fs, folder, makeId } = settled;
  try {
    await fs.mkdir(target);
    const names = await fs.readdir(target);
    if (names.includes(LIBRARY_FILE) || names.includes(LOG_FILE)) throw occupied(target);
    await copyAttachments(fs, join(folder, 'attachments'), join(target, 'attachments'));
    const copy = await ofItsOwn(bytes, unsaved, makeId());
    await writeWholeFile(fs, join(target, LOG_FILE), copy.log);
    await writeWholeFile(fs, join(target, LIBRARY_FILE), copy.file);
  } catch (error) {
    throw diskProblem(error, 'save a copy of the library');
  }
}

async function ofItsOwn(
  bytes: Uint8Array,
  unsaved: readonly LoggedStatement[],
  id: string,
): Promise<{ file: Uint8Array; log: Uint8Array }> {
  const engine = await Engine.open(bytes);
  try {
    engine.control('BEGIN');
    for (const [sql, ...values] of unsaved) engine.run(sql, ...values);
    writeId(engine, id);
    engine.control('COMMIT');
    const file = engine.exportBytes();
    const { sequence = 0, chain = '' } = readMeta(engine) ?? {};
    const log = encodeHeader({ libraryId: id, sequence, chain, fileSha256: sha256Of(file) });
    return { file, log: withRoom(log) };
  } finally {
    engine.close();
  }
}

async function copyAttachments(fs: FileSystem, from: string, to: string): Promise<void> {
  for (const group of await namesIn(fs, from)) {
    const names = await namesIn(fs, join(from, group));
    if (names.length > 0) await fs.mkdir(join(to, group));
    for (const name of names) {
      await writeWholeFile(fs, join(to, group, name), await fs.readFile(join(from, group, name)));
    }
  }
}

async function namesIn(fs: FileSystem, folder: string): Promise<string[]> {
  try {
    return await fs.readdir(folder);
  } catch (error) {
    if (isMissing(error)) return [];
    throw error;
  }
}

function occupied(target: string): Problem {
  return new Problem({
    code: 'conflict',
    title: 'There is a library in that folder already.',
    advice: 'Choose an empty folder for the copy. Nothing was changed.',
    facts: { folder: target },
  });
}
