import type { Place, Shape } from '@core/record/place';
import type { RecordKind } from '@core/record/change';
import type { ZodType } from 'zod';

/** A record as the library holds it. */
export interface Held<T> {
  /** The count of its edits. */
  revision: number;
  content: T;
}

/** One record's way to the library and back. */
export interface DraftSource<T extends object> {
  kind: RecordKind;
  /** Empty for what a library has once. */
  id: string;
  /** Reads a state, also one that an older Stillroom kept. */
  schema: ZodType<T>;
  /** What cannot be seen of a state: which lists go by what, and what is one fact. */
  shape: Shape;
  /** What the record is called, where it is told of on another screen. */
  nameOf(content: T): string;
  read(): Promise<Held<T>>;
  /** Saves a state over the one that is held. @returns it as the library holds it now */
  write(state: T, over: Held<T>): Promise<Held<T>>;
  /** Where a fault is that the service names in another way than by path below `content`. */
  placeOfFault?(path: string, state: T): Place | null;
}
