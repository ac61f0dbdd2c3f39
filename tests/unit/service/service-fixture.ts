import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { composeService } from '@service/compose';
import { afterEach } from 'vitest';

type Composed = ReturnType<typeof composeService>;

type Kind = 'empty' | 'demonstration';

/** The files of a closed library by their paths within it. */
type Files = Map<string, Buffer>;

function readFiles(library: string): Files {
  const files = readdirSync(library, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const paths = files.map((one) => join(one.parentPath, one.name));
  return new Map(paths.map((path) => [path.slice(library.length + 1), readFileSync(path)]));
}

function writeFiles(files: Files, library: string): void {
  for (const [name, bytes] of files) {
    mkdirSync(dirname(join(library, name)), { recursive: true });
    writeFileSync(join(library, name), bytes);
  }
}

async function makeFiles(kind: Kind): Promise<Files> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'stillroom-test-')));
  const { session } = composeService({ documents: folder, config: join(folder, 'config') });
  await session.create(join(folder, 'Shelf'), kind);
  await session.close();
  const files = readFiles(join(folder, 'Shelf'));
  rmSync(folder, { recursive: true, force: true });
  return files;
}

/** New libraries, each made once by the real session: making one takes thirty times as long as opening it. */
const made = new Map<Kind, Promise<Files>>();

function madeFiles(kind: Kind): Promise<Files> {
  const files = made.get(kind) ?? makeFiles(kind);
  made.set(kind, files);
  return files;
}

/** Kinds of which the test under way has one already. */
const opened = new Set<Kind>();

const cleanUps: (() => Promise<void>)[] = [];
afterEach(async () => {
  opened.clear();
  for (const cleanUp of cleanUps.splice(0)) await cleanUp();
});

/** Opens a new library; a second one of its kind is made anew, so that no two in a test are the same library. */
async function openNew({ session }: Composed, library: string, kind: Kind): Promise<void> {
  if (opened.has(kind)) {
    await session.create(library, kind);
    return;
  }
  opened.add(kind);
  writeFiles(await madeFiles(kind), library);
  await session.open(library);
}

/** The real service over a real library in a folder of its own, which goes when the test ends. */
export async function serviceWith(
  kind: Kind | 'none' = 'empty',
  /** The name of the home folder within that, where a page may list its folders. */
  { home }: { home?: string } = {},
) {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'stillroom-test-')));
  const composed: Composed = composeService({
    documents: join(folder, 'documents'),
    config: join(folder, 'config'),
    ...(home ? { home: join(folder, home) } : {}),
  });
  cleanUps.push(async () => {
    await composed.session.close();
    rmSync(folder, { recursive: true, force: true });
  });
  if (kind !== 'none') await openNew(composed, join(folder, 'documents', 'Shelf'), kind);

  /** Sends a request as a screen would, and reads the JSON answer. */
  async function ask<T = Record<string, unknown>>(method: string, path: string, body?: unknown) {
    const response = await composed.service.request(`/api${path}`, {
      method,
      ...(body === undefined
        ? {}
        : { body: JSON.stringify(body), headers: { 'Content-Type': 'application/json' } }),
    });
    const text = await response.text();
    return {
      status: response.status,
      type: response.headers.get('content-type'),
      body: (text ? JSON.parse(text) : null) as T,
    };
  }
  return { ...composed, ask, folder };
}

export type Ask = Awaited<ReturnType<typeof serviceWith>>['ask'];
