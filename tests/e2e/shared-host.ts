import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { HostProcess, removeFolder, temporaryFolder } from './host-process';

const listed = z.object({ folders: z.array(z.object({ token: z.string(), name: z.string() })) });
const status = z.object({ open: z.object({ name: z.string() }).nullable() });

/**
 * One host for the tests of a worker: each opens a library of its own in it and closes it, as a maker does who works on
 * one after another. Its home is a folder of its own.
 */
export class SharedHost {
  private libraries = 0;

  private constructor(
    readonly host: HostProcess,
    private readonly home: string,
  ) {}

  static async start(): Promise<SharedHost> {
    const home = temporaryFolder();
    return new SharedHost(await HostProcess.start({ args: [], folder: home }), home);
  }

  /** Opens a copy of a closed library, in a new folder under the home, the way a page does. Answers that folder. */
  async openCopy(of: string): Promise<string> {
    this.libraries += 1;
    const place = `Test ${this.libraries}`;
    cpSync(of, join(this.home, place, 'library'), { recursive: true });
    const home = listed.parse(await this.host.get('/api/library/folders'));
    const parent = tokenOf(home, place);
    const inside = listed.parse(await this.host.get(`/api/library/folders?token=${parent}`));
    const opened = await this.host.post('/api/library/open', { token: tokenOf(inside, 'library') });
    if (!status.parse(opened).open) throw new Error(`The library was not opened: ${JSON.stringify(opened)}`);
    return join(this.home, place);
  }

  async closeLibrary(): Promise<void> {
    await this.host.post('/api/library/close', {});
  }

  /** Ends the host and answers its exit code. */
  async stop(): Promise<number | null> {
    const code = await this.host.stop();
    removeFolder(this.home);
    return code;
  }
}

function tokenOf({ folders }: z.infer<typeof listed>, name: string): string {
  const token = folders.find((folder) => folder.name === name)?.token;
  if (!token) throw new Error(`There is no folder ${name}.`);
  return token;
}
