import { join } from 'node:path';
import { isMissing } from '../file/file-system';
import type { Settled } from '../options';
import { sha256Of, writeWholeFile } from '../file/whole-file';

/**
 * Keeps the bytes of a file that is about to be replaced, among the backups, under a name that is not taken yet.
 * They are read back: what is replaced afterwards is there for good. Answers the path.
 */
export async function keepAside(settled: Settled, bytes: Uint8Array, what: string): Promise<string> {
  const { fileSystem: fs, backupFolder } = settled;
  await fs.mkdir(backupFolder);
  const path = await freePath(settled, what);
  const { durable } = await writeWholeFile(fs, path, bytes);
  if (!durable || sha256Of(await fs.readFile(path)) !== sha256Of(bytes))
    throw Object.assign(new Error('The copy kept aside is not sure to be whole.'), { code: 'EIO' });
  return path;
}

async function freePath({ fileSystem: fs, backupFolder, now }: Settled, what: string): Promise<string> {
  const stamp = now().toISOString().replaceAll(/[:.]/g, '-');
  for (let count = 1; ; count += 1) {
    const path = join(backupFolder, `${stamp} ${count === 1 ? '' : `${count} `}${what}`);
    try {
      await fs.stat(path);
    } catch (error) {
      if (isMissing(error)) return path;
      throw error;
    }
  }
}
