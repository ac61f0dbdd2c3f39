import { EventEmitter } from 'node:events';

/**
 * Loaded before a program that is made for Electron's utility process: gives it `process.parentPort` over Node's own
 * channel to the parent. As in Electron, what comes before anyone listens waits.
 */
class ParentPort extends EventEmitter {
  waiting = [];

  constructor() {
    super();
    process.on('message', (data) => {
      if (this.listenerCount('message') > 0) this.emit('message', { data, ports: [] });
      else this.waiting.push(data);
    });
    this.on('newListener', (name) => {
      if (name !== 'message') return;
      queueMicrotask(() => {
        for (const data of this.waiting.splice(0)) this.emit('message', { data, ports: [] });
      });
    });
  }

  postMessage(message) {
    process.send?.(message);
  }
}

Object.defineProperty(process, 'parentPort', { value: new ParentPort() });
process.on('disconnect', () => process.exit());
