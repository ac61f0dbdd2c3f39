import { createHash, randomUUID } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readMeta } from '@db/library/file/meta';
import { encodeHeader } from '@db/library/log/log-format';
import { withRoom } from '@db/library/log/log-room';
import { Engine } from '@db/library/sql/engine';
import { createLibraryOpener } from '@service/library/opener';

/**
 * Makes a library in a folder of its own whose contents go straight into the file: filling is not measured. Its log
 * knows the file by its hash, as after a rewrite of our own. Returns the folder and the size of the file in bytes.
 */
export async function filledLibrary(
  fill: (engine: Engine) => void,
): Promise<{ folder: string; bytes: number }> {
  const folder = join(mkdtempSync(join(tmpdir(), 'stillroom-bench-')), 'library');
  const opener = createLibraryOpener({ now: () => new Date(), newId: () => randomUUID() });
  await (await opener.create(folder)).close();
  const file = join(folder, 'library.sqlite');
  const engine = await Engine.open(await readFile(file));
  engine.control('BEGIN');
  fill(engine);
  engine.control('COMMIT');
  const meta = readMeta(engine);
  if (!meta) throw new Error('A library that was just made has no meta.');
  const { id, sequence, chain } = meta;
  const bytes = engine.exportBytes();
  engine.close();
  await writeFile(file, bytes);
  const fileSha256 = createHash('sha256').update(bytes).digest('hex');
  const header = encodeHeader({ libraryId: id, sequence, chain, fileSha256 });
  await writeFile(join(folder, 'library.log'), withRoom(header));
  return { folder, bytes: bytes.length };
}
