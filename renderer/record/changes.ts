import { LIBRARY, type ChangesPosition, type RecordChange } from '@core/record/change';
import { onScopeDispose } from 'vue';
import { hearChanges, type Heard } from './change-stream';

/** Told instead of the changes that went by unheard: anything may be different. */
export const MISSED: RecordChange = { kind: 'missed', id: '', revision: null };
export type Listener = (change: RecordChange) => void;

/** Whether a change may be of any record at all. */
export function isOfAll({ kind }: RecordChange): boolean {
  return kind === LIBRARY || kind === MISSED.kind;
}

const CHANNEL = 'stillroom changes';
const listeners = new Set<Listener>();
const connected = new Set<() => void>();
let position: ChangesPosition | null = null;

function take(heard: Heard): void {
  if (heard.is === 'connected') for (const listener of connected) listener();
  if (heard.is === 'connected' || heard.is === 'lost') return;
  // A window that hears through another may hear of the same change twice.
  const known = position?.run === heard.position.run && position.told >= heard.position.told;
  if (heard.is === 'change' && known) return;
  position = heard.position;
  for (const listener of [...listeners]) listener(heard.is === 'change' ? heard.change : MISSED);
}

/**
 * Hears what changes, in this window or another. A browser allows few lasting connections to one place: only one
 * window has it, and tells the others; when it closes, the next takes over.
 * @param from how far the service was before anything on screen was read
 */
export function startHearing(from: ChangesPosition): () => void {
  position = from;
  const channel = new BroadcastChannel(CHANNEL);
  const stop = new AbortController();
  channel.onmessage = ({ data }: MessageEvent<Heard>) => take(data);
  const parts = {
    connect: (signal: AbortSignal) => fetch('/api/changes', { signal }),
    position: () => position,
    hear: (heard: Heard) => {
      channel.postMessage(heard);
      take(heard);
    },
  };
  const hear = (): Promise<void> => hearChanges(parts, stop.signal);
  // The wait for one's turn ends with the window.
  void navigator.locks.request(CHANNEL, { signal: stop.signal }, hear).catch(() => undefined);
  return () => {
    stop.abort();
    channel.close();
  };
}

/** Tells a screen, or a store, of every change while it lives. */
export function onChange(listener: Listener): void {
  listeners.add(listener);
  onScopeDispose(() => void listeners.delete(listener));
}

/** Calls when the service answers again, so that what could not be saved is sent. */
export function onConnected(listener: () => void): void {
  connected.add(listener);
  onScopeDispose(() => void connected.delete(listener));
}
