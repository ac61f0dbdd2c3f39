import { createRequire } from 'node:module';

/**
 * pdfkit turns each of a page's thousands of drawing commands into bytes of its own, to put them together at the end.
 * Here they are put together first.
 */

interface Reference {
  buffer: Uint8Array[];
  write(chunk: string | Uint8Array): void;
  finalize(): void;
}

interface Kit {
  ref(data: object): Reference;
}

const installed = createRequire(import.meta.url);
const waiting = new WeakMap<Reference, string[]>();

/** Puts the commands that wait behind what was written before. */
function settle(reference: Reference, write: Reference['write']): void {
  const commands = waiting.get(reference);
  if (!commands) return;
  waiting.delete(reference);
  write.call(reference, commands.join('\n'));
}

/** Makes pdfkit gather the commands of what it writes. Called once, before the first sheet. */
export function gatherCommands(): void {
  const Document = installed('pdfkit') as new (options: object) => Kit;
  const prototype = Object.getPrototypeOf(new Document({ autoFirstPage: false }).ref({})) as Reference;
  const { write, finalize } = prototype;
  prototype.write = function (chunk) {
    if (typeof chunk === 'string') {
      const commands = waiting.get(this);
      if (commands) commands.push(chunk);
      else waiting.set(this, [chunk]);
      return;
    }
    settle(this, write);
    write.call(this, chunk);
  };
  prototype.finalize = function () {
    settle(this, write);
    finalize.call(this);
  };
}
