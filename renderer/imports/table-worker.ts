import { readTableFile } from '@core/imports/read-table-file';
import { Problem } from '@core/problems/problem';
import type { TableRead } from './read-in-worker';

/** Reads a maker's file beside the page, which answers meanwhile and can end it at any time. */
addEventListener('message', async ({ data }: MessageEvent<{ name: string; bytes: Uint8Array }>) => {
  let read: TableRead;
  try {
    read = { sheets: await readTableFile(data.name, data.bytes) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { message: title, code, advice, fields, facts } = error;
    read = { problem: { title, code, advice, fields, facts } };
  }
  postMessage(read);
});
