import { blanks, signatureBlock, tickBoxes, writingLines } from '@core/sheets/kit/by-hand';
import { cautionBox } from '@core/sheets/kit/caution-box';
import { factList, factRow } from '@core/sheets/kit/facts';
import {
  contentWidth,
  pageMargins,
  sheet,
  sheetLanguage,
  shortened,
  type SheetFrame,
} from '@core/sheets/kit/page';
import { columnWidths, headed, PADDING, ruledTable, wholeTable, type Column } from '@core/sheets/kit/tables';
import { titleBlock } from '@core/sheets/kit/title-block';
import type { Cell, SheetNode, TableNode } from '@core/sheets/kit/definition';
import { settings } from '@core/settings/settings';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textsOf } from './sheet-words';

const SETTINGS = settings.parse({ makerName: 'Marrow & Thyme', makerAddress: '4 Weir Lane' });
const FRAME: SheetFrame = {
  kind: 'Formula sheet',
  title: 'Rose cream',
  number: 'F-1, version 2',
  settings: SETTINGS,
  printedAt: '2026-03-01T10:00:00Z',
};
const text = (words: string): Cell => ({ text: words });

describe('the page (ISO 216 and ANSI/ASME Y14.1, in points of 1/72 inch)', () => {
  it('leaves room between its margins: A4 upright 210 mm less 22 mm for the binder and 14 mm', () => {
    expect(contentWidth('A4')).toBeCloseTo((210 / 25.4) * 72 - 62 - 40, 1);
    expect(contentWidth('A4', 'landscape')).toBeCloseTo((297 / 25.4) * 72 - 80, 1);
    expect(contentWidth('LETTER')).toBe(8.5 * 72 - 102);
    expect(contentWidth('LETTER', 'landscape')).toBe(11 * 72 - 80);
  });
  it('is bound at the left where it stands, at the top where it lies', () => {
    const [left, top] = pageMargins('portrait');
    const [edge, head] = pageMargins('landscape');
    expect(left).toBeGreaterThan(edge);
    expect(head).toBeGreaterThan(top);
  });
  it('says title, number, date printed and which page of how many in its foot', () => {
    const foot = sheet(FRAME, []).footer(2, 5);
    const [name = '', printed = ''] = textsOf(foot);
    expect(name).toBe('Formula sheet · F-1, version 2 · Rose cream');
    expect(printed).toMatch(/^Printed .*2026.* · page 2 of 5$/);
  });
  it('shortens a title in the foot and never the number that is asked for', () => {
    const [name = ''] = textsOf(sheet({ ...FRAME, title: 'x'.repeat(200) }, []).footer(1, 1));
    expect(name).toContain('F-1, version 2');
    expect(name.length).toBeLessThan(120);
    expect(shortened('Rose cream', 10)).toBe('Rose cream');
    expect(shortened('Rose creams', 10)).toBe('Rose crea…');
    expect(shortened('Rose  cream', 6)).toBe('Rose…');
  });
  it('has a language to be read aloud in: English, as the region has it', () => {
    expect(['en-GB', 'en-US', 'de-DE', 'de-CH'].map((region) => sheetLanguage(region as 'en-GB'))).toEqual([
      'en-GB',
      'en-US',
      'en',
      'en',
    ]);
  });
  it('is named for whoever files it', () => {
    expect(sheet(FRAME, []).info).toEqual({
      title: 'Formula sheet – Rose cream – F-1, version 2',
      author: 'Marrow & Thyme',
      subject: 'Formula sheet',
    });
    expect(sheet({ ...FRAME, number: '' }, []).info.title).toBe('Formula sheet – Rose cream');
  });
});

describe('a table', () => {
  const share = fc.integer({ min: 1, max: 60 });
  const columns = fc.array(fc.record({ share, byHand: fc.boolean() }), { minLength: 1, maxLength: 9 });
  it('is never wider than its page, whatever its columns: text, padding and rules come to the width', () => {
    fc.assert(
      fc.property(columns, fc.integer({ min: 300, max: 760 }), (some, width) => {
        const made: Column[] = some.map((one) => ({ ...one, head: 'x' }));
        const { layout, table } = ruledTable({ columns: made, rows: [made.map(() => text('x'))], width });
        const padding = made.reduce(
          (sum, _, at) => sum + layout.paddingLeft(at) + layout.paddingRight(at),
          0,
        );
        const rules = Array.from({ length: made.length + 1 }, (_, at) => layout.vLineWidth(at)).reduce(
          (sum, one) => sum + one,
          0,
        );
        const wide = table.widths.reduce((sum, one) => sum + one, 0) + padding + rules;
        // The rule at its right edge may be left out: half a point.
        expect(wide).toBeLessThanOrEqual(width + 1e-6);
        expect(wide).toBeGreaterThan(width - 0.6);
      }),
      { numRuns: 60 },
    );
  });
  it('gives columns of like shares like room, but for the padding at the edge', () => {
    const [first, ...others] = columnWidths([{ share: 1 }, { share: 1 }, { share: 1 }], 300);
    expect(others[0]).toBeCloseTo(others[1]!, 9);
    expect(first! - others[0]!).toBeCloseTo(PADDING, 9);
  });
  it('repeats its head and caption on every page, and never splits a row that fits one', () => {
    const rows = Array.from({ length: 50 }, () => [text('x'), text('y')]);
    const { table } = ruledTable({
      columns: [
        { head: 'A', share: 1 },
        { head: 'B', share: 1 },
      ],
      rows,
      width: 400,
      caption: { text: 'Phase A' },
    });
    expect(table.headerRows).toBe(2);
    expect(table.dontBreakRows).toBe(true);
    expect(table.keepWithHeaderRows).toBe(1);
    expect(table.body).toHaveLength(52);
    expect(textsOf({ table } as TableNode).slice(0, 3)).toEqual(['Phase A', 'A', 'B']);
  });
  it('lets a row be split that no page would hold', () => {
    const { table } = ruledTable({
      columns: [{ head: 'A', share: 1 }],
      rows: [[text('word '.repeat(3000))]],
      width: 400,
    });
    expect(table.dontBreakRows).toBe(false);
    expect(table.keepWithHeaderRows).toBe(0);
  });
  it('gives a hand the height that it asks for, in rows and not in heads', () => {
    const { table } = ruledTable({
      columns: [{ head: 'A', share: 1, byHand: true }],
      rows: [[text('')]],
      width: 400,
      rowHeight: 24,
    });
    expect([0, 1].map((row) => table.heights?.(row))).toEqual(['auto', 24]);
  });
  it('stays whole where it fits half a page, and is let go where it does not', () => {
    const of = (count: number): SheetNode =>
      wholeTable(
        ruledTable({
          columns: [{ head: 'A', share: 1 }],
          rows: Array.from({ length: count }, () => [text('x')]),
          width: 400,
        }),
      );
    expect((of(5) as { unbreakable?: boolean }).unbreakable).toBe(true);
    expect((of(80) as { unbreakable?: boolean }).unbreakable).toBe(false);
  });
  it('has a heading that keeps with its first row, and says nothing else', () => {
    const table = ruledTable({ columns: [{ head: 'A', share: 1 }], rows: [[text('x')]], width: 400 });
    expect(headed('Lines', table).flatMap(textsOf)).toEqual(['Lines', 'A', 'x']);
    expect(headed('Lines').flatMap(textsOf)).toEqual(['Lines']);
  });
});

describe('facts', () => {
  it('that are not known are left out, in either way of setting them', () => {
    const facts = [
      { label: 'Code', value: 'F-1' },
      { label: 'Purpose', value: '' },
      { label: 'Use', value: { text: 'Leave-on' } },
    ];
    expect(textsOf(factList(facts, 400)!)).toEqual(['Code', 'F-1', 'Use', 'Leave-on']);
    expect(textsOf(factRow(facts, 400))).toEqual(['Code', 'F-1', 'Use', 'Leave-on']);
    expect(factList([{ label: 'Purpose', value: '' }], 400)).toBeNull();
    expect(textsOf(factRow([], 400))).toEqual([]);
  });
  it('stand so many in a row, and all of them are there', () => {
    const facts = Array.from({ length: 7 }, (_, at) => ({ label: `L${at}`, value: `V${at}` }));
    const row = factRow(facts, 400, 3) as { stack: { columns: SheetNode[] }[] };
    expect(row.stack.map(({ columns }) => columns.length)).toEqual([3, 3, 1]);
    expect(textsOf(row as SheetNode)).toHaveLength(14);
  });
});

describe('the head of a sheet', () => {
  it('says its kind, its title, who made it, then the facts', () => {
    const words = titleBlock(FRAME, [{ label: 'Code', value: 'F-1' }], 'A cream').flatMap(textsOf);
    expect(words).toEqual([
      'Formula sheet',
      'Rose cream',
      'A cream',
      'Marrow & Thyme',
      '4 Weir Lane',
      'Code',
      'F-1',
    ]);
  });
  it('of nobody has no empty place for a maker', () => {
    const nobody = { ...FRAME, settings: settings.parse({}) };
    expect(titleBlock(nobody, []).flatMap(textsOf)).toEqual(['Formula sheet', 'Rose cream']);
  });
  it('sets a long title smaller, so that the page is left to its content', () => {
    const size = (length: number): number => {
      const [head] = titleBlock({ ...FRAME, title: 'x'.repeat(length) }, []) as {
        columns: { stack: { fontSize: number }[] }[];
      }[];
      return head!.columns[0]!.stack[1]!.fontSize;
    };
    expect(size(61)).toBeLessThan(size(60));
    expect(size(121)).toBeLessThan(size(120));
  });
});

describe('what a hand writes', () => {
  it('has a line for each who signs, with name, signature and date', () => {
    expect(textsOf(signatureBlock(['Weighed', 'Checked'], 400))).toEqual([
      'Name',
      'Signature',
      'Date',
      'Weighed',
      'Checked',
    ]);
    expect((signatureBlock(['Weighed'], 400) as { unbreakable?: boolean }).unbreakable).toBe(true);
  });
  it('has its lines 7 mm apart, each as wide as the page', () => {
    const { canvas } = writingLines(3, 400) as { canvas: { y1: number; x2: number }[] };
    expect(canvas.map(({ x2 }) => x2)).toEqual([400, 400, 400]);
    expect((canvas[1]!.y1 - canvas[0]!.y1) / (72 / 25.4)).toBeGreaterThan(7);
  });
  it('has a label before each blank and a box before each choice', () => {
    expect(textsOf(blanks(['Lot', 'Tare'], 400))).toEqual(['Lot', 'Tare']);
    expect(textsOf(tickBoxes(['released', 'refused']))[0]).toMatch(/^☐ released\s+☐ refused$/);
  });
});

describe('cautions', () => {
  it('are told by words and a sign, never by colour alone, and there is no box around none', () => {
    expect(cautionBox([], 400)).toEqual([]);
    expect(cautionBox(['Hot oil burns.', 'Lye burns.'], 400).flatMap(textsOf)).toEqual([
      '▲ Caution',
      '– Hot oil burns.',
      '– Lye burns.',
    ]);
  });
  it('are kept together, unless they are a page of their own', () => {
    const kept = (words: string): boolean | undefined =>
      (cautionBox([words], 400)[0] as { unbreakable?: boolean }).unbreakable;
    expect(kept('x')).toBe(true);
    expect(kept('x'.repeat(2000))).toBe(false);
  });
});
