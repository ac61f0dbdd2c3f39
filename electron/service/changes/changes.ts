import { randomUUID } from 'node:crypto';
import { LIBRARY, type ChangesPosition, type RecordChange } from '@core/record/change';

export interface Told {
  change: RecordChange;
  position: ChangesPosition;
}

interface Listener {
  hear(told: Told): void;
  end(): void;
}

/** Tells every window which records changed, after each commit. The one place through which all changes are told. */
export class Changes {
  private readonly run = randomUUID();
  private readonly listeners = new Set<Listener>();
  private told = 0;

  /** How far it is: a window that knows of all until here has missed nothing. */
  position(): ChangesPosition {
    return { run: this.run, told: this.told };
  }

  /** Another library, or another state of it, is open now: nothing that a window shows may be true any more. */
  tellLibrary(): void {
    this.tell({ kind: LIBRARY, id: '', revision: null });
  }

  /** Calls `hear` at each change from now on; `end` when the service stops. @returns stops listening */
  listen(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  /** The service stops: whoever listens is let go, so that the host need not wait for them. */
  end(): void {
    for (const listener of this.listeners) listener.end();
    this.listeners.clear();
  }

  /** Tells of a change that is safe on the disk. */
  tell(change: RecordChange): void {
    this.told += 1;
    const told = { change, position: this.position() };
    for (const listener of this.listeners) listener.hear(told);
  }
}
