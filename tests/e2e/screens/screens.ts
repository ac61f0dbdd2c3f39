import type { Page } from '@playwright/test';
import { button, finder, openList, press, sheet, tab, type Screen } from './openers';

const bench = (tool: string): string => `/bench?tool=${tool}`;
const calculator = (tool: string): string => `/calculators?tool=${tool}`;
const always = (address: string) => () => address;
async function takeOils(page: Page): Promise<void> {
  if (await page.getByText('From Hedgerow Day Cream').isVisible()) return;
  await button(page, 'Take from a formula').click();
  await page.getByRole('button', { name: 'Take the oil phase' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await button(page, /^Put on the bench/).click();
}

/** Every route of the shell, and on each all that opens. A test holds this against the router and the components. */
export const SCREENS: Screen[] = [
  {
    name: 'today',
    route: 'home',
    address: always('/'),
    openers: [finder],
  },
  {
    name: 'materials',
    route: 'materials',
    address: always('/materials'),
    openers: [
      {
        ...press('columns', ['lists/ColumnChoice'], 'Columns'),
        // There is nothing to choose columns of.
        there: (page) => button(page, 'Columns').isVisible(),
      },
      press('add a material', ['materials/NewMaterial'], 'Add material'),
    ],
  },
  {
    name: 'materials narrowed down',
    route: 'materials',
    address: always('/materials?charge=non-ionic&functions=emulsifier'),
    openers: [
      {
        ...press('save this search', ['materials/SavedSearches'], 'Save this search…'),
        there: (page) => button(page, 'Save this search…').isVisible(),
      },
      {
        name: 'filters',
        components: ['lists/FilterPanel'],
        there: (page) => button(page, 'Filters').isVisible(),
        open: (page) => button(page, 'Filters').click(),
        close: (page) => button(page, 'Filters').click(),
      },
    ],
  },
  {
    name: 'materials, nothing found',
    route: 'materials',
    address: always('/materials?text=zzzz'),
  },
  {
    name: 'material',
    route: 'material',
    address: (records) => records && `/materials/${records.materials[0]}`,
    openers: [
      press('delete a material', ['materials/DeleteMaterial'], 'Delete'),
      sheet('specification', ['materials/MaterialPane'], 'Print'),
      {
        name: 'leaving what cannot be saved',
        components: ['shell/LeaveQuestion'],
        async open(page) {
          await page.getByRole('textbox', { name: 'Trade name' }).fill('');
          await page.getByRole('link', { name: 'Today' }).click();
          await page.getByRole('dialog').waitFor();
        },
        async close(page) {
          await button(page, 'Stay here').click();
          await button(page, 'Undo').click();
        },
      },
    ],
  },
  {
    name: 'a material in use',
    route: 'material',
    address: (records) => records && `/materials/${records.used}`,
    openers: [
      {
        name: 'history of a material',
        components: ['materials/MaterialHistory', 'record/HistoryDialog'],
        async open(page) {
          await button(page, 'History').click();
          await page.getByRole('dialog').getByRole('button', { name: /^Now/ }).waitFor();
        },
      },
      {
        name: 'since a version',
        components: ['materials/sections/UsesSection'],
        async open(page) {
          await button(page, 'Changed since…').click();
          await page.getByRole('dialog').getByRole('row').nth(1).waitFor();
        },
      },
    ],
  },
  {
    name: 'compare',
    route: 'compare',
    address: always('/compare'),
  },
  {
    name: 'compare three',
    route: 'compare',
    address: (records) =>
      records &&
      `/compare?${records.materials
        .slice(0, 3)
        .map((id) => `id=${id}`)
        .join('&')}`,
    openers: [sheet('comparison', ['materials/ComparePage'], 'Print hand-out')],
  },
  {
    name: 'formulas',
    route: 'formulas',
    address: always('/formulas'),
    openers: [press('start a formula', ['formulas/NewFormula'], 'New formula')],
  },
  {
    name: 'formulas, some picked',
    route: 'formulas',
    address: (records) => records && '/formulas',
    prepare: (page) => page.getByRole('checkbox', { name: 'Pick all shown' }).check(),
    openers: [
      press('delete a formula', ['formulas/FormulaActions'], /^Delete /),
      {
        name: 'many sheets',
        components: ['sheets/ManySheets'],
        async open(page) {
          await button(page, 'Print formula sheets…').click();
          await page.getByText(/sheets? made/).waitFor();
        },
      },
    ],
  },
  {
    name: 'formula',
    route: 'formula',
    address: (records) => records && `/formulas/${records.formula}`,
    openers: [
      press('record a version', ['formulas/RecordVersion'], 'Record version…'),
      {
        name: 'history of a formula',
        components: ['formulas/FormulaHistory', 'record/HistoryDialog'],
        async open(page) {
          await button(page, 'History').click();
          await page.getByRole('dialog').getByRole('button', { name: /^Now/ }).waitFor();
        },
      },
      sheet('formula sheet', ['formulas/FormulaPage'], 'Formula sheet…'),
      {
        name: 'paste lines',
        components: ['formulas/PasteLines', 'formulas/PastedLines'],
        async open(page) {
          await page.getByRole('button', { name: /^Paste lines into phase A/ }).click();
          await page.getByLabel('Lines', { exact: true }).fill('Aqua\tq.s.\nUnheard-of wax\t3.333333');
          await page.getByLabel('What Unheard-of wax becomes').waitFor();
          await page.locator('select[aria-label^="What"]:enabled').first().waitFor();
        },
      },
      {
        name: 'replace a line',
        components: ['formulas/LineRow'],
        async open(page) {
          await page
            .getByRole('button', { name: /^Replace / })
            .first()
            .click();
          await openList(page, page.getByRole('combobox', { name: /^Replace / }));
        },
        async close(page) {
          await page.keyboard.press('Escape');
          await page.keyboard.press('Escape');
        },
      },
      tab('Ingredients'),
      tab('Cost'),
      tab('Missing'),
    ],
  },
  {
    name: 'versions',
    route: 'versions',
    address: (records) => records && `/formulas/${records.formula}/versions?view=${records.version}`,
    openers: [sheet('version sheet', ['formulas/VersionsPage'], /sheet…$/)],
  },
  {
    name: 'batches',
    route: 'batches',
    address: always('/batches'),
  },
  {
    name: 'plan a batch',
    route: 'batches',
    address: (records) => (records ? `/batches?version=${records.version}` : '/batches?plan=new'),
  },
  {
    name: 'batch',
    route: 'batch',
    address: (records) => records && `/batches/${records.batch}`,
    openers: [sheet('batch record', ['batches/BatchPage'], /batch record/i)],
  },
  {
    name: 'bench, system',
    route: 'bench',
    address: always(bench('system')),
    openers: [press('take from a formula', ['emulsions/TakeFromFormula'], 'Take from a formula')],
  },
  {
    name: 'bench with a system',
    route: 'bench',
    address: (records) => records && bench('system'),
    prepare: takeOils,
    openers: [
      press('use in a formula', ['emulsions/UseInFormula'], 'Use in formula…'),
      sheet('working of the bench', ['emulsions/SystemTool'], 'Print working…'),
    ],
  },
  { name: 'bench, optimise', route: 'bench', address: always(bench('optimise')) },
  { name: 'bench, trials', route: 'bench', address: always(bench('trials')) },
  {
    name: 'bench with a trial series',
    route: 'bench',
    address: (records) => records && bench('system'),
    async prepare(page) {
      await takeOils(page);
      await page.getByRole('link', { name: 'Trials' }).click();
      // Whatever system is proposed first, its level can be varied; a ratio asks for a pair.
      await page.getByRole('combobox', { name: 'Vary' }).selectOption('levels');
      await button(page, 'Plan and save the series').click();
      await page.getByRole('region', { name: 'Trial series' }).waitFor();
    },
    openers: [
      press('delete the series', ['trials/TrialSeriesView'], 'Delete…'),
      sheet('trial sheet', ['trials/TrialSeriesView'], 'Print series…'),
    ],
  },
  {
    name: 'bench, HLB',
    route: 'bench',
    address: always(bench('hlb')),
    openers: ['SMILES', 'Figures', 'Groups'].map((name) => ({
      name: `the HLB by ${name}`,
      components: [],
      open: (page) => page.getByRole('radio', { name, exact: true }).check(),
      close: (page) => page.getByRole('radio', { name: 'Chain and head', exact: true }).check(),
    })),
  },
  {
    name: 'bench, HLB with an answer',
    route: 'bench',
    address: (records) => records && bench('hlb'),
    async prepare(page) {
      await page.getByLabel('Fatty chain').selectOption('c18');
      await page.getByLabel('Head', { exact: true }).selectOption('glyceryl');
      await page.locator('[data-method=davies]').waitFor();
    },
    openers: [
      press('save to a material', ['calculators/SaveHlb'], 'Save to material…'),
      sheet('working of a calculator', ['calculators/CalculatorFrame'], 'Print working'),
    ],
  },
  { name: 'bench, HLD', route: 'bench', address: always(bench('hld')) },
  {
    name: 'bench, HLD with typed figures',
    route: 'bench',
    address: (records) => records && bench('hld'),
    async prepare(page) {
      await button(page, 'Type EACN').click();
      await button(page, 'Type Cc').click();
      await button(page, 'Type Cc').click();
    },
  },
  { name: 'bench, phase inversion', route: 'bench', address: always(bench('phase-inversion')) },
  { name: 'bench, viscosity of oils', route: 'bench', address: always(bench('viscosity')) },
  { name: 'bench, density', route: 'bench', address: always(bench('density')) },
  { name: 'neutralise', route: 'calculators', address: always(calculator('neutralise')) },
  { name: 'preservative acids', route: 'calculators', address: always(calculator('preserve')) },
  { name: 'pH and buffers', route: 'calculators', address: always(calculator('solutions')) },
  { name: 'separation and ageing', route: 'calculators', address: always(calculator('screening')) },
  {
    name: 'creaming',
    route: 'calculators',
    address: (records) => records && calculator('screening'),
    async prepare(page) {
      // Any figures will do: they only have to give an answer to print.
      for (const field of await page.locator('main form').first().getByRole('textbox').all())
        await field.fill('2');
    },
    openers: [sheet('working of a screening', ['calculators/TopicTool'], 'Print working')],
  },
  { name: 'settings', route: 'settings', address: always('/settings') },
  {
    name: 'library',
    route: 'library',
    address: always('/library'),
    prepare: (page) => button(page, 'Back up now').click(),
    openers: [press('go back to a backup', ['library/LibraryPage'], 'Go back to this…')],
  },
];
