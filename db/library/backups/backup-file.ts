import { join } from 'node:path';
import type { FileSystem } from '../file/file-system';
import { openBytes } from '../file/library-bytes';
import { writeWholeFile } from '../file/whole-file';

export const BACKUP_REASONS = ['hourly', 'daily', 'migration', 'restore', 'request'] as const;
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

const NAME = /^(\d{4})-(\d\d)-(\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z change (\d+) ([a-z]+)\.sqlite$/;

/** No colons, which Windows does not allow in names. */
export function backupName(order: BackupOrder, sequence: number): string {
  return `${order.at.replaceAll(/[:.]/g, '-')} change ${sequence} ${order.reason}.sqlite`;
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
  const name = backupName(order, sequence);
  const path = join(order.folder, name);
  await fs.mkdir(order.folder);
  await writeWholeFile(fs, path, bytes);
  try {
    const { engine } = await openBytes(await fs.readFile(path), Number.MAX_SAFE_INTEGER);
    engine.close();
  } catch (error) {
    await fs.unlink(path).catch(() => undefined);
    throw error;
  }
  return { name, madeAt: order.at, sequence, reason: order.reason, bytes: bytes.length, good: true };
}
