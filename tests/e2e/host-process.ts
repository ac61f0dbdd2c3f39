import type { Page } from '@playwright/test';
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const HOST_PROGRAM = resolve(import.meta.dirname, '../../out/main/loopback.js');
const START_LIMIT_MS = 120_000;
const STOP_LIMIT_MS = 60_000;
/** A connection kept for the next request may be closed by the host, on a busy machine just as that is sent. */
const ONCE = { Connection: 'close' };

/** What a library's folder may hold once nobody has it open. Anything else was left over. */
const KEPT = new Set(['library.sqlite', 'library.log', 'attachments', 'backups']);

export interface HostStart {
  /** Arguments after the program's name. */
  args: string[];
  /** A folder of this run's own: home, configuration and temporary files all go there. */
  folder: string;
  /** Chosen by the system when left out. */
  port?: string;
  /** The user that the host runs as; whoever runs the tests when left out. */
  uid?: number;
}

/** The real, built loopback host as a process of its own, as `npm start` runs it. */
export class HostProcess {
  private entered: Promise<string> | undefined;

  private constructor(
    private readonly child: ChildProcess,
    /** `http://127.0.0.1:PORT/?key=…`, which works once: {@link visit} and {@link post} use it up. */
    readonly address: string,
    readonly output: () => string,
  ) {}

  static async start({ args, folder, port = '0', uid }: HostStart): Promise<HostProcess> {
    const home = {
      HOME: folder,
      USERPROFILE: folder,
      APPDATA: folder,
      XDG_CONFIG_HOME: join(folder, 'config'),
    };
    const temporary = { TMPDIR: folder, TMP: folder, TEMP: folder };
    const child = spawn(process.execPath, [HOST_PROGRAM, '--no-open', '--port', port, ...args], {
      env: { ...process.env, ...home, ...temporary },
      stdio: ['ignore', 'pipe', 'pipe'],
      uid,
    });
    let output = '';
    const address = await new Promise<string>((found, fail) => {
      const give = (text: string) => {
        clearTimeout(timer);
        fail(new Error(`${text}\n${output}`));
      };
      const timer = setTimeout(() => {
        child.kill('SIGKILL');
        give('The host printed no address in time.');
      }, START_LIMIT_MS);
      const read = (chunk: Buffer) => {
        output += chunk.toString();
        const line = /Stillroom is at (http:\/\/127\.0\.0\.1:\d+\/\?key=\S+)/.exec(output);
        if (!line?.[1]) return;
        clearTimeout(timer);
        found(line[1]);
      };
      child.stdout.on('data', read);
      child.stderr.on('data', read);
      child.once('error', (error) => give(error.message));
      child.once('exit', (code) => give(`The host ended with ${code} before it printed its address.`));
    });
    return new HostProcess(child, address, () => output);
  }

  get pid(): number {
    return this.child.pid ?? 0;
  }

  /** `http://127.0.0.1:PORT` */
  get origin(): string {
    return new URL(this.address).origin;
  }

  /**
   * The value of a Cookie header that carries this run's secret: as the first visit of a browser gets it.
   * For requests that a test makes itself, with {@link origin} as their Origin.
   */
  cookie(): Promise<string> {
    this.entered ??= this.enter();
    return this.entered;
  }

  private async enter(): Promise<string> {
    const response = await fetch(this.address, { headers: ONCE });
    const [cookie] = (response.headers.get('set-cookie') ?? '').split(';');
    if (!cookie) throw new Error(`The host gave no cookie for its own address: ${response.status}`);
    return cookie;
  }

  /** Opens a screen, or goes to another, in a browser that has used the printed address. */
  async visit(page: Page, screen = '/'): Promise<void> {
    const [name = '', value = ''] = (await this.cookie()).split('=');
    const cookie = { name, value, url: this.origin, httpOnly: true, sameSite: 'Strict' as const };
    await page.context().addCookies([cookie]);
    await page.goto(`${this.origin}/#${screen}`);
  }

  /** Sends JSON to the service as the page would; throws what it answers to a refused request. */
  post(path: string, body: unknown): Promise<unknown> {
    return this.send('POST', path, body);
  }

  /** As {@link post}, by another method. */
  async send(method: 'POST' | 'PUT' | 'PATCH', path: string, body: unknown): Promise<unknown> {
    const response = await fetch(this.origin + path, {
      method,
      headers: {
        ...ONCE,
        'Content-Type': 'application/json',
        Origin: this.origin,
        Cookie: await this.cookie(),
      },
      body: JSON.stringify(body),
    });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response.json();
  }

  /** What the service answers to a request of the page; throws when it refuses. */
  async get(path: string): Promise<unknown> {
    const response = await fetch(this.origin + path, { headers: { ...ONCE, Cookie: await this.cookie() } });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response.json();
  }

  /** Ends the host as a crash does: it gets to do nothing more. */
  async kill(): Promise<void> {
    const ended = once(this.child, 'exit');
    this.child.kill('SIGKILL');
    await ended;
  }

  /** Asks the host to stop, as Ctrl-C does, and answers its exit code; null when it had to be killed. */
  async stop(): Promise<number | null> {
    if (this.child.exitCode !== null) return this.child.exitCode;
    const timer = setTimeout(() => this.child.kill('SIGKILL'), STOP_LIMIT_MS);
    const ended = once(this.child, 'exit') as Promise<[number | null]>;
    this.child.kill('SIGTERM');
    const [code] = await ended;
    clearTimeout(timer);
    return code;
  }
}

/** A new temporary folder, by its real path. */
export function temporaryFolder(): string {
  return realpathSync(mkdtempSync(join(tmpdir(), 'stillroom-e2e-')));
}

/** Names in a closed library's folder that do not belong there: temporary files, locks. */
export function leftovers(library: string): string[] {
  return readdirSync(library).filter((name) => !KEPT.has(name));
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
