import { batchSheet } from '@core/sheets/batch-sheet';
import { blankTarget } from '@core/formulas/formula';
import { formulaSheet } from '@core/sheets/formula-sheet';
import type { FormulaVersion } from '@core/formulas/formula';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import type { ListPage } from '@core/lists/query';
import type { MaterialRow } from '@core/materials/list';
import { renderSheet } from '@service/sheets/render';
import { describe, expect, it } from 'vitest';
import { serviceWith } from '../service/service-fixture';
import { readPdf } from './read-pdf';
import { AT, GLYCERIN } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch, sampleLine } from './samples';

const pagesOf = async (sheet: SheetDefinition) =>
  (await readPdf(await renderSheet(sheet, { now: new Date(AT) }))).pages;

const LONG =
  'Wet the gum with the glycerol, add the water with stirring and heat until nothing floats. '.repeat(3);

/** The cream with more lines in its first phase, which pushes all else down, and with a long first step. */
function pushedDown(lines: number): FormulaVersion {
  const [first, ...others] = CREAM.phases;
  const [step, ...steps] = CREAM.steps;
  const more = Array.from({ length: lines }, () => sampleLine(GLYCERIN, 0.1));
  return {
    ...CREAM_VERSION,
    content: {
      ...CREAM,
      phases: [{ ...first!, lines: [...first!.lines, ...more] }, ...others],
      steps: [{ ...step!, instruction: LONG }, ...steps],
    },
  };
}

/** What a heading stands with, at the least. */
const FIRST_ROWS: Record<string, string> = {
  Weighing: 'Purified water',
  Procedure: 'nothing floats',
  'In-process checks': 'Glossy cream',
  'Sign-off and release': 'Write “none” if there were none',
};

/** A small cream, as a first one is: six lines in three phases, five steps, four figures to check. */
function sixLines(): FormulaVersion {
  const counts = [2, 3, 1];
  const { appearance, odour, phLow, phHigh, viscosityLow, viscosityHigh } = CREAM.target;
  return {
    ...CREAM_VERSION,
    content: {
      ...CREAM,
      phases: CREAM.phases.map((phase, at) => ({ ...phase, lines: phase.lines.slice(0, counts[at]) })),
      steps: CREAM.steps.slice(0, 5),
      target: { ...blankTarget(), appearance, odour, phLow, phHigh, viscosityLow, viscosityHigh },
    },
  };
}

describe('page breaks', () => {
  it.each(['A4', 'LETTER'] as const)(
    'leave a batch record of six lines on two pages of %s',
    async (paperSize) => {
      const version = sixLines();
      const pages = await pagesOf(batchSheet(sampleBatch(version), version, { ...MAKER, paperSize }, AT));
      expect(pages).toHaveLength(2);
      expect(pages[0]).toContain('Total of all targets');
      expect(pages[1]).toContain('Released by');
    },
  );

  it.each(['A4', 'LETTER'] as const)(
    'of a batch record on %s keep each heading with its first row, and the sign-off with the deviations',
    async (paperSize) => {
      for (let lines = 0; lines <= 12; lines += 2) {
        const version = pushedDown(lines);
        const pages = await pagesOf(batchSheet(sampleBatch(version), version, { ...MAKER, paperSize }, AT));
        for (const [title, row] of Object.entries(FIRST_ROWS)) {
          const page = pages.find((one) => one.includes(`${title} `)) ?? '';
          expect(page, `${lines} more lines: ${title}`).toContain(row);
        }
      }
    },
    120_000,
  );

  it('of a formula sheet keep the procedure’s heading with its first step', async () => {
    for (let lines = 8; lines <= 20; lines += 3) {
      const formula = {
        content: pushedDown(lines).content,
        materials: CREAM_VERSION.materials,
        version: null,
      };
      const options = { forSharing: false, tradeNames: true };
      const pages = await pagesOf(formulaSheet(formula, options, MAKER, AT));
      expect(pages.find((page) => page.includes('Procedure '))).toContain('nothing floats');
    }
  }, 120_000);

  it('leave five emulsifiers on one page of Letter and six on one of A4', async () => {
    const { ask, service } = await serviceWith('demonstration');
    const { body: shelf } = await ask<ListPage<MaterialRow>>('GET', '/materials?functions=emulsifier');
    const ids = shelf.rows.map((row) => row.id);
    for (const [count, paperSize] of [
      [5, 'LETTER'],
      [6, 'A4'],
    ] as const)
      for (const start of [0, 20]) {
        const answer = await service.request('/api/sheets', {
          method: 'POST',
          body: JSON.stringify({
            kind: 'comparison',
            materialIds: ids.slice(start, start + count),
            paperSize,
          }),
          headers: { 'Content-Type': 'application/json' },
        });
        const { pages } = await readPdf(new Uint8Array(await answer.arrayBuffer()));
        expect(pages, `${count} from ${start}`).toHaveLength(1);
      }
  }, 120_000);
});

it('of a formula sheet keep each phase whole, with its last line under its caption', async () => {
  for (const lines of [8, 15]) {
    const content = pushedDown(lines).content;
    const formula = { content, materials: CREAM_VERSION.materials, version: null };
    const pages = await pagesOf(formulaSheet(formula, { forSharing: false, tradeNames: true }, MAKER, AT));
    for (const phase of content.phases.slice(1)) {
      const page = pages.find((one) => one.includes(phase.title)) ?? '';
      const last = CREAM_VERSION.materials[phase.lines.at(-1)?.materialId ?? '']?.tradeName ?? '';
      expect(page, `${lines} more lines, ${phase.title}`).toContain(last);
      expect(pages.filter((one) => one.includes(phase.title)).length).toBe(1);
    }
  }
}, 120_000);
