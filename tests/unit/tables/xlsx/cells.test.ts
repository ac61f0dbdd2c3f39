import { describe, expect, it } from 'vitest';
import { cellsOf, sharedStrings, sheetOf, styles } from './hand-built';

describe('a text cell', () => {
  it('holds the shared text that it means, its runs joined and its pronunciation left out', () => {
    const items =
      '<si><t>Cetyl alcohol</t></si>' +
      '<si><r><rPr><b/></rPr><t>Glyceryl </t></r><r><t xml:space="preserve">stearate </t></r></si>' +
      '<si><t>乳化</t><rPh sb="0" eb="2"><t>ニュウカ</t></rPh><phoneticPr fontId="1"/></si>';
    const cells = '<c t="s"><v>2</v></c><c t="s"><v>0</v></c><c t="s"><v>1</v></c>';
    const read = cellsOf(cells, { 'xl/sharedStrings.xml': sharedStrings(items) });
    expect(read).toEqual(['乳化', 'Cetyl alcohol', 'Glyceryl stearate ']);
  });

  it('may hold its text itself, in runs too', () => {
    const cells =
      '<c t="inlineStr"><is><t> two  blanks </t></is></c>' +
      '<c t="inlineStr"><is><r><t>a</t></r><rPh><t>x</t></rPh><r><t>b</t></r></is></c>' +
      '<c t="inlineStr"><is><t><![CDATA[<0.5 & rising]]></t></is></c><c><is><t>0815</t></is></c>';
    expect(cellsOf(cells)).toEqual([' two  blanks ', 'ab', '<0.5 & rising', '0815']);
  });

  // Source of the examples: ECMA-376 Part 1, 22.4.2.4 bstr.
  it('gives back what XML cannot hold, and leaves what only looks so', () => {
    const item = '<si><t>_x0008_|_x005F_x0008_|a_x000d__x000A_b|_x00G1_</t></si>';
    const read = cellsOf('<c t="s"><v>0</v></c>', { 'xl/sharedStrings.xml': sharedStrings(item) });
    expect(read).toEqual(['\b|_x0008_|a\r\nb|_x00G1_']);
  });

  it('takes an escape across two runs for no escape', () => {
    const item = '<si><r><t>_x00</t></r><r><t>41_</t></r></si>';
    const read = cellsOf('<c t="s"><v>0</v></c>', { 'xl/sharedStrings.xml': sharedStrings(item) });
    expect(read).toEqual(['_x0041_']);
  });

  it('is empty where its text is', () => {
    const more = { 'xl/sharedStrings.xml': sharedStrings('<si><t/></si><si/>') };
    const cells =
      '<c t="s"><v>0</v></c><c t="s"><v>1</v></c><c t="inlineStr"><is><t></t></is></c><c><v>1</v></c>';
    expect(cellsOf(cells, more)).toEqual([null, null, null, 1]);
  });
});

describe('a number cell', () => {
  it('keeps every digit', () => {
    const cells = ['1', '-0.5', '.5', '5.', '1E-3', '0.30000000000000004', ' 42 ', '1.7976931348623157E+308'];
    expect(cellsOf(cells.map((value) => `<c><v>${value}</v></c>`).join(''))).toEqual([
      1, -0.5, 0.5, 5, 0.001, 0.30000000000000004, 42, 1.7976931348623157e308,
    ]);
  });

  it('keeps what a careless program wrote in its place as text', () => {
    const cells = ['12,5', '0x10', 'NaN', '1E999', 'Infinity'];
    expect(cellsOf(cells.map((value) => `<c t="n"><v>${value}</v></c>`).join(''))).toEqual(cells);
  });

  it('is shown as per cent where its format says so, as the maker sees it', () => {
    const more = { 'xl/styles.xml': styles(9, 10, '0.0#\\ %', '0 "%"') };
    const cells =
      '<c s="0"><v>0.05</v></c><c s="1"><v>0.07</v></c><c s="2"><v>1.255</v></c><c s="3"><v>5</v></c>';
    expect(cellsOf(cells, more)).toEqual(['5%', '7%', '125.5%', 5]);
  });
});

describe('other cells', () => {
  it('are yes and no, errors, and dates in words', () => {
    const cells =
      '<c t="b"><v>1</v></c><c t="b"><v>0</v></c><c t="b"><v>true</v></c><c t="e"><v>#N/A</v></c>' +
      '<c t="d"><v>2026-03-01T00:00:00Z</v></c><c t="d"><v>2026-03-01</v></c><c t="d"><v>2026-02-30</v></c>';
    expect(cellsOf(cells)).toEqual([
      true,
      false,
      true,
      { error: '#N/A' },
      { date: '2026-03-01T00:00:00' },
      { date: '2026-03-01' },
      '2026-02-30',
    ]);
  });

  it('hold the value last worked out for their formula', () => {
    const cells =
      '<c><f>1+1</f><v>2</v></c><c t="str"><f>A1&amp;"x"</f><v>2_x0041_</v></c><c t="e"><f>1/0</f><v>#DIV/0!</v></c>' +
      '<c t="b"><f>TRUE</f><v>1</v></c><c t="str"><f>""</f><v></v></c><c><f t="shared" si="0"/><v>7</v></c>';
    const sheet = sheetOf(`<row>${cells}</row>`);
    expect(sheet.rows[0]!.cells).toEqual([2, '2A', { error: '#DIV/0!' }, true, null, 7]);
    expect(sheet.notes).toEqual([]);
  });
});
