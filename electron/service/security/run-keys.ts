import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const BYTES = 32;

function sameText(one: string, other: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(one), digest(other));
}

/**
 * Who may talk to this run: an address carries a key that works once, and is exchanged for a secret that no address,
 * history or list of processes ever holds.
 */
export class RunKeys {
  private key: string | null = null;
  private readonly secrets: string[] = [];

  /** @param random gives a text that nobody can guess; a test may give its own */
  constructor(private readonly random = () => randomBytes(BYTES).toString('base64url')) {}

  /** A new key for an address; one given before and not used yet is void. */
  issue(): string {
    this.key = this.random();
    return this.key;
  }

  /** The secret that a key is worth, once; undefined for any other text. */
  exchange(given: string): string | undefined {
    if (this.key === null || !sameText(given, this.key)) return undefined;
    this.key = null;
    const secret = this.random();
    this.secrets.push(secret);
    return secret;
  }

  /** Whether a secret was given out by this run. */
  knows(given: string | undefined): boolean {
    return given !== undefined && this.secrets.some((secret) => sameText(given, secret));
  }
}
