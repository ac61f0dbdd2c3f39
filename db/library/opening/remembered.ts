import type { Position } from '../log/log-format';

/** How a library stood when it was last open for writing on this computer. */
export interface Remembered extends Position {
  id: string;
}

/**
 * What a host keeps of libraries outside of their folders: what is replaced there as a whole, by older files or by those
 * of another computer, is noticed by nothing else.
 */
export interface LibraryMemory {
  recall(folder: string): Remembered | undefined;
  remember(folder: string, remembered: Remembered): void;
}
