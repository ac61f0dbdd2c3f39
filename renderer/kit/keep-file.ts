import type { FiledPaper } from '@core/materials/document';
import { answer } from '../service/client';

export type KeptFile = Omit<FiledPaper, 'title'>;

/** Copies a file into the library. @returns what it is kept as, and why a sheet cannot show it, where it cannot */
export async function keepFile(file: Blob): Promise<{ kept: KeptFile; cannotPrint: string | null }> {
  const body = await file.arrayBuffer();
  const posted = fetch('/api/attachments', { method: 'POST', body });
  const { cannotPrint, ...kept } = await answer<KeptFile & { cannotPrint: string | null }>(posted);
  return { kept, cannotPrint };
}
