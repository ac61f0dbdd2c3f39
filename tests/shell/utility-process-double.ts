import { fork as forkNode, type ChildProcess } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { basename } from 'node:path';
import type * as Electron from 'electron';
import { builtFile } from './built-output';

type Calls = Pick<Electron.UtilityProcess, 'postMessage' | 'kill'>;

/**
 * Stands in for Electron's utility process: a real process of Node's that runs the real program as it was built, with
 * messages copied as Electron copies them.
 */
export class UtilityProcessDouble extends EventEmitter implements Calls {
  static readonly forked: UtilityProcessDouble[] = [];
  private readonly child: ChildProcess;

  private constructor(
    readonly modulePath: string,
    args: string[],
    readonly options: Electron.ForkOptions,
  ) {
    super();
    const shim = new URL('parent-port.mjs', import.meta.url).href;
    this.child = forkNode(builtFile(`main/${basename(modulePath)}`), args, {
      execArgv: ['--import', shim],
      serialization: 'advanced',
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    this.child.on('message', (message) => this.emit('message', message));
    this.child.once('exit', (code) => this.emit('exit', code ?? 0));
    UtilityProcessDouble.forked.push(this);
  }

  static fork(modulePath: string, args: string[] = [], options: Electron.ForkOptions = {}) {
    return new UtilityProcessDouble(modulePath, args, options);
  }

  postMessage: Electron.UtilityProcess['postMessage'] = (message) => {
    if (this.child.connected) this.child.send(message as object);
  };
  kill: Electron.UtilityProcess['kill'] = () => this.child.kill('SIGTERM');

  /** Ends it without warning, as a crash or a lack of memory would. */
  crash(): void {
    this.child.kill('SIGKILL');
  }
}
