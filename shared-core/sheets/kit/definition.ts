/**
 * A sheet as data: the part of pdfmake's document definition that our sheets use. Kept as types of our own so
 * that shared-core stays free of libraries; `electron/service/sheets` renders it.
 */

export type Margins = [left: number, top: number, right: number, bottom: number];
export type Alignment = 'left' | 'center' | 'right';

/** Families the service embeds: the text face, and the fixed-width face for lot and batch numbers. */
export const TEXT_FONT = 'Source Sans 3';
export const NUMBER_FONT = 'Source Code Pro';

export interface TextStyle {
  font?: typeof TEXT_FONT | typeof NUMBER_FONT;
  fontSize?: number;
  bold?: boolean;
  italics?: boolean;
  color?: string;
  alignment?: Alignment;
  lineHeight?: number;
  characterSpacing?: number;
  noWrap?: boolean;
}

interface Placed {
  margin?: Margins;
  /** Points; columns and cells only. */
  width?: number | '*' | 'auto';
  unbreakable?: boolean;
  pageBreak?: 'before' | 'after';
}

export interface TextRun extends TextStyle {
  text: string;
}

export interface TextNode extends TextStyle, Placed {
  text: string | TextRun[];
  /** 1 is the sheet's title, 2 a section; read aloud as headings. */
  headlineLevel?: 1 | 2 | 3;
  /** By which a page number and the outline find it. */
  id?: string;
  /** Stands in the outline of the document, under another node where `outlineParentId` names it. */
  outline?: boolean;
  outlineText?: string;
  outlineExpanded?: boolean;
  outlineParentId?: string;
  /** Prints the page on which the node of this id stands, in the place of its text. */
  pageReference?: string;
}

export interface StackNode extends Placed {
  stack: SheetNode[];
}

export interface ColumnsNode extends Placed {
  columns: SheetNode[];
  columnGap?: number;
}

export interface CellPlace {
  colSpan?: number;
  rowSpan?: number;
  border?: [left: boolean, top: boolean, right: boolean, bottom: boolean];
  verticalAlignment?: 'top' | 'middle' | 'bottom';
}

/** A cell; an empty object stands where a span covers. */
export type Cell = (SheetNode & CellPlace) | Record<PropertyKey, never>;

export interface TableLayout {
  hLineWidth: (row: number) => number;
  vLineWidth: (column: number) => number;
  hLineColor: (row: number) => string;
  vLineColor: (column: number) => string;
  paddingLeft: (column: number) => number;
  paddingRight: (column: number) => number;
  paddingTop: (row: number) => number;
  paddingBottom: (row: number) => number;
}

export interface TableNode extends Placed {
  table: {
    widths: number[];
    body: Cell[][];
    /** Rows repeated on every page. A table without any is for arranging only, and is not read as a table. */
    headerRows?: number;
    keepWithHeaderRows?: number;
    dontBreakRows?: boolean;
    heights?: (row: number) => number | 'auto';
  };
  layout: TableLayout;
}

export interface ImageNode extends Placed {
  /** A data URL; nothing else can be reached. */
  image: string;
  fit: [width: number, height: number];
  alignment?: Alignment;
  /** Read aloud in place of the picture. */
  alt: string;
}

/** A plot, drawn as SVG by the service. */
export interface PlotNode extends Placed {
  svg: string;
  fit: [width: number, height: number];
  /** Read aloud in place of the plot. */
  alt: string;
}

export interface RuleNode extends Placed {
  canvas: {
    type: 'line';
    x1: number;
    y1: number;
    x2: number;
    y2: number;
    lineWidth: number;
    lineColor: string;
  }[];
}

export type SheetNode = TextNode | StackNode | ColumnsNode | TableNode | ImageNode | PlotNode | RuleNode;

export interface SheetDefinition {
  pageSize: 'A4' | 'LETTER';
  pageOrientation: 'portrait' | 'landscape';
  pageMargins: Margins;
  /** BCP 47, for reading aloud. */
  language: string;
  info: { title: string; author: string; subject: string };
  defaultStyle: TextStyle;
  content: SheetNode[];
  footer: (page: number, pages: number) => SheetNode;
}
