import type { MessagePort } from 'node:worker_threads';
import type { Port } from '@service/bridge/messages';

/** A bridge's end over a port of Node's, between two threads of one process. */
export function nodePort<Sent, Heard>(port: MessagePort): Port<Sent, Heard> {
  return {
    post: (message) => port.postMessage(message),
    listen: (hear) => void port.on('message', hear),
  };
}
