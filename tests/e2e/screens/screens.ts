import { BENCH_SCREENS } from './bench-screens';
import { LAW_SCREENS, LAW_TABS } from './law-screens';
import { LIBRARY_SCREENS } from './library-screens';
import { DATASHEET_SCREENS } from './datasheet-screens';
import { TABLE_SCREENS } from './table-screens';
import { attach, button, finder, openList, press, sheet, tab, type Screen } from './openers';

const always = (address: string) => () => address;

/** Every route of the shell, and on each all that opens. A test holds this against the router and the components. */
export const SCREENS: Screen[] = [
  {
    name: 'today',
    route: 'home',
    address: always('/'),
    openers: [
      finder,
      {
        name: 'keys of the screen',
        components: ['shell/KeysHelp'],
        open: (page) => page.locator('body').press('?'),
      },
    ],
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
      {
        ...press('save as a table', ['exports/SaveTable'], 'Save as a table…'),
        there: (page) => button(page, 'Save as a table…').isVisible(),
      },
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
      {
        ...press('what a word means, to be read', ['glossary/TermMark'], 'Explain this word'),
        there: (page) => button(page, 'Explain this word').isVisible(),
      },
    ],
  },
  {
    name: 'material, edited',
    route: 'material',
    address: (records) => records && `/materials/${records.materials[0]}`,
    prepare: (page) => button(page, 'Edit').click(),
    openers: [
      {
        ...press('what a word means', ['glossary/TermMark'], 'Explain this word'),
        there: (page) => button(page, 'Explain this word').isVisible(),
      },
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
        components: ['record/FieldsHistory', 'record/HistoryDialog'],
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
  ...TABLE_SCREENS,
  ...DATASHEET_SCREENS,
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
    prepare: (page) => page.getByRole('checkbox', { name: 'Select all shown' }).check(),
    openers: [
      press('make a pack', ['exports/SendPack'], 'Make a pack…'),
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
    name: 'compare formulas',
    route: 'compare-formulas',
    address: (records) =>
      records ? `/formulas/compare?id=${records.formula}&id=${records.other}` : '/formulas/compare',
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
      press('adjust shares', ['formulas/AdjustShares'], 'Adjust shares…'),
      ...LAW_TABS,
      tab('Figures'),
      tab('Cost'),
      tab('Missing'),
    ],
  },
  {
    name: 'versions',
    route: 'versions',
    address: (records) => records && `/formulas/${records.formula}/versions?view=${records.version}`,
    openers: [
      sheet('version sheet', ['formulas/VersionActions'], /sheet…$/),
      press('approve a version', ['formulas/VersionActions', 'formulas/DecideVersion'], 'Approve…'),
      press('withdraw a version', ['formulas/DecideVersion'], 'Withdraw…'),
      press('product file', ['formulas/ProductFileDialog'], 'Product file…'),
      press('new draft of a version', ['formulas/VersionActions'], 'New draft from it…'),
    ],
  },
  { name: 'differences', route: 'differences', address: always('/formulas/differences') },
  {
    name: 'differences of two formulas',
    route: 'differences',
    address: (records) => records && `/formulas/differences?from=${records.formula}&to=${records.other}`,
    prepare: (page) => page.getByRole('heading', { name: 'What follows from it' }).waitFor(),
  },
  {
    name: 'reformulate',
    route: 'reformulate',
    address: (records) => records && `/formulas/${records.formula}/reformulate`,
    async prepare(page) {
      await button(page, '15 % less').click();
      await button(page, 'Find the nearest formula').click();
      await page.getByRole('heading', { name: 'The nearest formula, proven' }).waitFor();
    },
  },
  { name: 'swap', route: 'swap', address: always('/swap') },
  {
    name: 'swap a material',
    route: 'swap',
    address: (records) => records && `/swap?material=${records.used}`,
    async prepare(page) {
      await page.getByRole('radio').first().check();
      await page
        .getByRole('checkbox', { name: /^Swap it in/ })
        .first()
        .waitFor();
    },
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
    openers: [
      press('what came of it', ['batches/FinishBatch'], 'Record the outcome…'),
      attach('a photo or document', ['batches/BatchDocumentDialog'], /^Add a photo, certificate/),
      sheet('batch record', ['batches/BatchPage'], /batch record/i),
    ],
  },
  ...BENCH_SCREENS,
  { name: 'help', route: 'help', address: always('/help') },
  { name: 'where figures differ', route: 'help', address: always('/help?tool=figures') },
  {
    name: 'glossary',
    route: 'help',
    address: always('/help?tool=glossary&term=hlb'),
    openers: [sheet('glossary hand-out', ['glossary/GlossaryPage'], 'Print hand-out')],
  },
  ...LAW_SCREENS,
  { name: 'settings', route: 'settings', address: always('/settings') },
  ...LIBRARY_SCREENS,
];
