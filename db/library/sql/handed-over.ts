/**
 * Bytes that sql.js keeps instead of copying: a file of hundreds of megabytes need not stand in memory twice. It copies
 * with `slice`, once, and never looks at what lies behind the length that it was given until the database grows into
 * it; what memory there is behind the bytes is then used. Held by the contract test of sql.js.
 */
class HandedOver extends Uint8Array<ArrayBufferLike> {
  override slice(): Uint8Array<ArrayBuffer> {
    // In sql.js nothing asks which kind of memory it is.
    return new Uint8Array(this.buffer, this.byteOffset) as Uint8Array<ArrayBuffer>;
  }
}

export function handedOver(bytes: Uint8Array): Uint8Array {
  return new HandedOver(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
