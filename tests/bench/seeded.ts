/** A source of repeatable chance (mulberry32): the same seed gives the same library on every machine. */
export class Seeded {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** From 0 up to, but not including, 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = this.state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.next() * from.length)] as T;
  }

  /** Skewed as real choices are: the first ones are picked far more often than the last. */
  pickSkewed<T>(from: readonly T[]): T {
    return from[Math.floor(this.next() ** 2.5 * from.length)] as T;
  }

  /** Up to `count` different ones. */
  some<T>(from: readonly T[], count: number): T[] {
    const picked = new Set<T>();
    for (let i = 0; i < count; i++) picked.add(this.pick(from));
    return [...picked];
  }
}
