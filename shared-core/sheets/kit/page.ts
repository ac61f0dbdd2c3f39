import { formatMoment } from '../../locale/dates';
import type { Region } from '../../locale/numbers';
import type { Settings } from '../../settings/settings';
import type { Margins, SheetDefinition, SheetNode } from './definition';
import { TEXT_FONT } from './definition';
import { INK, QUIET_RULE, SIZE, SOFT_INK } from './type-scale';

export type SheetSettings = Pick<
  Settings,
  'makerName' | 'makerAddress' | 'languageRegion' | 'paperSize' | 'currency' | 'readabilityMg'
>;
export type Orientation = SheetDefinition['pageOrientation'];

/** Points: ISO 216 A4 is 210 × 297 mm, US Letter 8.5 × 11 in. */
const PAPER = { A4: [595.28, 841.89], LETTER: [612, 792] } as const;
// 22 mm for the binder's holes, at the left of an upright page and at the top of one that lies.
const BINDER = 62;
const EDGE = 40;
// 12 mm, which every printer reaches; the foot with its line stands in the lower one.
const TOP = 34;
const FOOT = 46;

export function pageMargins(orientation: Orientation): Margins {
  return orientation === 'portrait' ? [BINDER, TOP, EDGE, FOOT] : [EDGE, BINDER, EDGE, FOOT];
}

/** The width between the margins, in points. */
export function contentWidth(paper: Settings['paperSize'], orientation: Orientation = 'portrait'): number {
  const [short, long] = PAPER[paper];
  const [left, , right] = pageMargins(orientation);
  return (orientation === 'portrait' ? short : long) - left - right;
}

/** The language the words of a sheet are in; numbers and dates follow the region. */
export function sheetLanguage(region: Region): string {
  return region.startsWith('en') ? region : 'en';
}

/** Shortened for a footer or a file name; the whole stands in the title block. */
export function shortened(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
}

export interface SheetFrame {
  /** What kind of sheet: "Batch record". */
  kind: string;
  title: string;
  /** Code with version, or batch number; stands on every page. */
  number: string;
  settings: SheetSettings;
  /** ISO 8601. */
  printedAt: string;
  orientation?: Orientation;
  /** Set closer, where a table must leave room for hands; 1.1 of the face's own where left out. */
  lineHeight?: number;
}

function footer(frame: SheetFrame, width: number): SheetDefinition['footer'] {
  const { settings, printedAt } = frame;
  const [left, , right] = pageMargins(frame.orientation ?? 'portrait');
  const printed = `Printed ${formatMoment(printedAt, settings.languageRegion)}`;
  // The number before the title: if the line is too long for the foot, it is the title that suffers.
  const name = [frame.kind, shortened(frame.number, 30), shortened(frame.title, 60)]
    .filter(Boolean)
    .join(' · ');
  const style = { fontSize: SIZE.small, color: SOFT_INK } as const;
  return (page, pages) => ({
    margin: [left, 10, right, 0],
    stack: [
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: width, y2: 0, lineWidth: 0.5, lineColor: QUIET_RULE }] },
      {
        margin: [0, 4, 0, 0],
        columns: [
          { text: name, width: width - 210, ...style },
          { text: `${printed} · page ${page} of ${pages}`, width: 210, alignment: 'right', ...style },
        ],
      },
    ],
  });
}

/** Puts the content on pages: paper, binder margin, and a foot with title, number, date printed, page n of m. */
export function sheet(frame: SheetFrame, content: SheetNode[]): SheetDefinition {
  const orientation = frame.orientation ?? 'portrait';
  const { paperSize, languageRegion, makerName } = frame.settings;
  return {
    pageSize: paperSize,
    pageOrientation: orientation,
    pageMargins: pageMargins(orientation),
    language: sheetLanguage(languageRegion),
    info: {
      title: [frame.kind, frame.title, frame.number].filter(Boolean).join(' – '),
      author: makerName,
      subject: frame.kind,
    },
    defaultStyle: { font: TEXT_FONT, fontSize: SIZE.body, color: INK, lineHeight: frame.lineHeight ?? 1.1 },
    content,
    footer: footer(frame, contentWidth(paperSize, orientation)),
  };
}
