import { decimalSign, type Region } from '../../locale/numbers';
import type { TextNode } from './definition';
import { SIZE } from './type-scale';

/** The room of a digit and of a decimal sign in the face of the sheets, in its size. */
const DIGIT = 0.497;
const SIGN = 0.249;

/** What stands behind the whole units of a number, in the size of the type. */
function behind(text: string, sign: string): number {
  const at = text.lastIndexOf(sign);
  return at < 0 ? 0 : SIGN + DIGIT * (text.length - at - 1);
}

/**
 * The cells of a column of numbers, their decimal signs below each other: each is set in from the right by what others
 * have behind the sign and it has not.
 * @param texts numbers as the region writes them, or nothing
 */
export function onDecimal(texts: readonly string[], region: Region): TextNode[] {
  const sign = decimalSign(region);
  const most = Math.max(0, ...texts.map((text) => behind(text, sign)));
  return texts.map((text) => ({
    text,
    fontSize: SIZE.table,
    alignment: 'right',
    noWrap: true,
    margin: [0, 0, (most - behind(text, sign)) * SIZE.table, 0],
  }));
}
