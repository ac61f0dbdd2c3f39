/** Places of the cell styles in the part below (ECMA-376 Part 1, 18.8.10 cellXfs). */
export const STYLE = { plain: 0, head: 1, date: 2, moment: 3, inert: 4 } as const;

const NAMESPACE = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const xf = (format: number, rest = '') =>
  `<xf numFmtId="${format}" fontId="0" fillId="0" borderId="0" xfId="0"${rest}/>`;

/**
 * The styles part (18.8.39): days with a year of four figures, which no language shows in another order; a bold head;
 * and text that begins like a formula, marked so that editing it leaves it text (18.8.45 xf, quotePrefix).
 */
export const STYLES_PART = [
  `<styleSheet xmlns="${NAMESPACE}">`,
  '<numFmts count="2"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/>',
  '<numFmt numFmtId="165" formatCode="yyyy\\-mm\\-dd\\ hh:mm:ss"/></numFmts>',
  '<fonts count="2"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font>',
  '<font><b/><sz val="11"/><name val="Calibri"/><family val="2"/></font></fonts>',
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>',
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>',
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>',
  '<cellXfs count="5">',
  xf(0),
  '<xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1"/>',
  xf(164, ' applyNumberFormat="1"'),
  xf(165, ' applyNumberFormat="1"'),
  xf(0, ' quotePrefix="1"'),
  '</cellXfs>',
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>',
].join('');
