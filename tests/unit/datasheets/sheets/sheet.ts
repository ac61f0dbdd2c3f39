import type { Content } from 'pdfmake/interfaces';

/** An invented sheet of an invented material, and all that may be taken from it. */
export interface InventedSheet {
  name: string;
  content: Content;
  /** Every proposal that must be made, and none beside. */
  found: Readonly<Record<string, unknown>>;
  /** What may only be asked about. */
  unsure?: readonly string[];
}

export const one = (value: number) => ({ low: null, value, high: null });
export const range = (low: number, high: number) => ({ low, value: null, high });
export const most = (high: number) => ({ low: null, value: null, high });
export const least = (low: number) => ({ low, value: null, high: null });
export const within = (low: number, value: number, high: number) => ({ low, value, high });
export const whole = (inci: string) => [{ inci, lowPpm: 1_000_000, highPpm: 1_000_000 }];
export const part = (inci: string, low: number, high = low) => ({
  inci,
  lowPpm: low * 10_000,
  highPpm: high * 10_000,
});
