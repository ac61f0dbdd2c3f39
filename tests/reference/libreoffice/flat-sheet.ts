/* A spreadsheet as flat OpenDocument XML (OpenDocument 1.3, Part 3), which LibreOffice opens and saves as .xlsx: with it
   a test has LibreOffice write whatever a maker could have put on a sheet. */

const NAMESPACES = Object.entries({
  office: 'urn:oasis:names:tc:opendocument:xmlns:office:1.0',
  table: 'urn:oasis:names:tc:opendocument:xmlns:table:1.0',
  text: 'urn:oasis:names:tc:opendocument:xmlns:text:1.0',
  style: 'urn:oasis:names:tc:opendocument:xmlns:style:1.0',
  number: 'urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0',
  of: 'urn:oasis:names:tc:opendocument:xmlns:of:1.2',
})
  .map(([prefix, uri]) => `xmlns:${prefix}="${uri}"`)
  .join(' ');

const DAY = '<number:day number:style="long"/>';
const MONTH = '<number:month number:style="long"/>';
const YEAR = '<number:year number:style="long"/>';
const CLOCK =
  '<number:hours number:style="long"/><number:text>:</number:text><number:minutes number:style="long"/>';
const point = '<number:text>.</number:text>';

/** Number formats, by the name of the cell style that has them. */
const FORMATS: Record<string, string> = {
  date: `<number:date-style style:name="Ndate">${DAY}${point}${MONTH}${point}${YEAR}</number:date-style>`,
  moment: `<number:date-style style:name="Nmoment">${YEAR}${point}${MONTH}${point}${DAY}<number:text> </number:text>${CLOCK}</number:date-style>`,
  time: `<number:time-style style:name="Ntime">${CLOCK}</number:time-style>`,
  elapsed: `<number:time-style style:name="Nelapsed" number:truncate-on-overflow="false">${CLOCK}</number:time-style>`,
  percent:
    '<number:percentage-style style:name="Npercent"><number:number number:decimal-places="1" number:min-integer-digits="1"/><number:text>%</number:text></number:percentage-style>',
  logical: '<number:boolean-style style:name="Nlogical"><number:boolean/></number:boolean-style>',
  money:
    '<number:currency-style style:name="Nmoney"><number:number number:decimal-places="2" number:min-integer-digits="1"/><number:text> </number:text><number:currency-symbol number:language="de" number:country="DE">€</number:currency-symbol></number:currency-style>',
};

const cellStyle = (name: string) =>
  `<style:style style:name="${name}" style:family="table-cell" style:data-style-name="N${name}"/>`;
const STYLES =
  Object.values(FORMATS).join('') +
  Object.keys(FORMATS).map(cellStyle).join('') +
  '<style:style style:name="hidden" style:family="table"><style:table-properties table:display="false"/></style:style>';

/** A cell with its kind, its value, and whatever else it has: `cell('float', 12.5, 'style', attributes)`. */
export function cell(type: string, value: string | number | boolean, style = '', rest = ''): string {
  const name = { date: 'date-value', time: 'time-value', boolean: 'boolean-value' }[type] ?? 'value';
  const styled = style ? ` table:style-name="${style}"` : '';
  return `<table:table-cell office:value-type="${type}" office:${name}="${value}"${styled} ${rest}/>`;
}
/** A cell of text, given as paragraphs. */
export const textCell = (content: string, rest = '') =>
  `<table:table-cell office:value-type="string" ${rest}>${content}</table:table-cell>`;
export const paragraph = (content: string) => `<text:p>${content}</text:p>`;
export const row = (cells: string, rest = '') => `<table:table-row ${rest}>${cells}</table:table-row>`;
export const gap = (columns: number) => `<table:table-cell table:number-columns-repeated="${columns}"/>`;
export const emptyRows = (rows: number) => row('<table:table-cell/>', `table:number-rows-repeated="${rows}"`);
export const sheet = (name: string, rows: string, rest = '') =>
  `<table:table table:name="${name}" ${rest}>${rows}</table:table>`;

/** The file; `settings` stand before its sheets. */
export const flatFile = (sheets: string, settings = '') =>
  `<?xml version="1.0" encoding="UTF-8"?><office:document ${NAMESPACES} office:version="1.3" ` +
  'office:mimetype="application/vnd.oasis.opendocument.spreadsheet">' +
  `<office:automatic-styles>${STYLES}</office:automatic-styles>` +
  `<office:body><office:spreadsheet>${settings}${sheets}</office:spreadsheet></office:body></office:document>`;
