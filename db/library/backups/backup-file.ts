import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import type { FileSystem } from '../file/file-system';
import { openBytes } from '../file/library-bytes';
import { sha256Of, writeWholeFile } from '../file/whole-file';

export const BACKUP_REASONS = [
  'hourly',
  'daily',
  'migration',
  'restore',
  'merge',
  'import',
  'request',
] as const;
export type BackupReason = (typeof BACKUP_REASONS)[number];

export interface BackupOrder {
  folder: string;
  reason: BackupReason;
  /** ISO 8601 UTC. */
  at: string;
}

/** One backup: a library file like any other, named after when and why it was made. */
export interface Backup {
  name: string;
  /** When it was made, ISO 8601 UTC. */
  madeAt: string;
  /** The last change it holds. */
  sequence: number;
  reason: BackupReason;
  /** Its size, in bytes. */
  bytes: number;
  /** Whether it looked whole when last looked at. */
  good: boolean;
}

const NAME =
  /^(\d{4})-(\d\d)-(\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z change (\d+) ([a-z]+)(?: ([0-9a-f]{16}))?\.sqlite$/;

/**
 * A name without colons, which Windows does not allow. Its last word checks the content, since nothing else tells of
 * most single damaged bits; backups of before have none.
 */
export function backupName(order: BackupOrder, sequence: number, bytes: Uint8Array): string {
  return `${order.at.replaceAll(/[:.]/g, '-')} change ${sequence} ${order.reason} ${checkOf(bytes)}.sqlite`;
}

function checkOf(bytes: Uint8Array): string {
  return sha256Of(bytes).slice(0, 16);
}

/** Throws Problem library-damaged when a backup's bytes are not those that it was named after. */
export function refuseAltered(name: string, bytes: Uint8Array): void {
  const check = NAME.exec(name)?.[10];
  if (check === undefined || check === checkOf(bytes)) return;
  throw new Problem({
    code: 'library-damaged',
    title: 'This backup is damaged: it is not as it was written.',
    advice: 'Choose another one. Nothing was changed.',
    facts: { name },
  });
}

/** What a backup's name tells, or undefined for any other file. */
export function parseBackupName(
  name: string,
): Pick<Backup, 'name' | 'madeAt' | 'sequence' | 'reason'> | undefined {
  const [, year, month, day, hour, minute, second, ms, sequence, word] = NAME.exec(name) ?? [];
  const reason = BACKUP_REASONS.find((known) => known === word);
  if (sequence === undefined || !reason) return undefined;
  const madeAt = `${year}-${month}-${day}T${hour}:${minute}:${second}.${ms}Z`;
  return { name, madeAt, sequence: Number(sequence), reason };
}

/** Writes a backup, then reads it back, opens and checks it: a copy that fails is removed and not counted. */
export async function writeBackup(
  fs: FileSystem,
  order: BackupOrder,
  sequence: number,
  bytes: Uint8Array,
): Promise<Backup> {
  const name = backupName(order, sequence, bytes);
  const path = join(order.folder, name);
  await fs.mkdir(order.folder);
  await writeWholeFile(fs, path, bytes);
  try {
    const found = await fs.readFile(path);
    refuseAltered(name, found);
    (await openBytes(found, Number.MAX_SAFE_INTEGER)).engine.close();
  } catch (error) {
    await fs.unlink(path).catch(() => undefined);
    throw error;
  }
  return { name, madeAt: order.at, sequence, reason: order.reason, bytes: bytes.length, good: true };
}
