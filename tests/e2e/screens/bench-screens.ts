import type { Page } from '@playwright/test';
import { button, press, sheet, type Screen } from './openers';

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

/** The bench and the calculators, tool by tool. */
export const BENCH_SCREENS: Screen[] = [
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
      {
        name: 'history of a series',
        components: ['trials/TrialSeriesView'],
        async open(page) {
          await button(page, 'History').click();
          await page.getByText('No changes yet').waitFor();
        },
      },
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
  { name: 'stability trends', route: 'calculators', address: always(calculator('trends')) },
  { name: 'solubility', route: 'calculators', address: always(calculator('solubility')) },
  { name: 'microbiology', route: 'calculators', address: always(calculator('microbiology')) },
  { name: 'balance', route: 'calculators', address: always(calculator('weighing')) },
  { name: 'net contents', route: 'calculators', address: always(calculator('net-contents')) },
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
];
