import type { PageText, TextItem } from './lines';

/** A piece of text as a reader of PDF gives it: `transform` places it from the lower left corner (ISO 32000-1, 9.4.4). */
export interface PlacedText {
  str: string;
  transform: readonly number[];
  width: number;
  height: number;
}

/** Text that is turned, such as a watermark or what stands up the margin, is no line of the sheet. */
const isUpright = ([, rise = 0, , up = 0]: readonly number[]): boolean => Math.abs(rise) < 0.01 && up > 0;

/** The text of a page as it is read from a sheet: placed from the upper left corner, in points. */
export function pageText(
  number: number,
  { width, height }: { width: number; height: number },
  items: readonly PlacedText[],
): PageText {
  const placed = items.flatMap(({ str, transform, ...size }): TextItem[] => {
    const [, , , letters = 0, x = 0, y = 0] = transform;
    if (str.trim() === '' || !isUpright(transform)) return [];
    return [{ text: str, x, y: height - y - letters, width: size.width, height: letters }];
  });
  return { number, width, height, items: placed };
}
