const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The CRC-32 of ZIP (APPNOTE 4.4.7) of a piece that follows what had the check `before`; 0 at the beginning. */
export function crc32(piece: Uint8Array, before: number): number {
  let check = ~before;
  for (let at = 0; at < piece.length; at++) check = TABLE[(check ^ piece[at]!) & 0xff]! ^ (check >>> 8);
  return ~check >>> 0;
}
