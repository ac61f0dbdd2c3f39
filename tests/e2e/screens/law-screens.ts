import { expect, type Page } from '@playwright/test';
import { button, press, sheet, tab, type Opener, type Screen } from './openers';

const always = (address: string) => () => address;

const history = (component: string): Opener => ({
  name: 'history',
  components: [component, 'record/RecordPane', 'record/HistoryDialog'],
  async open(page) {
    await button(page, 'History').click();
    // An example that nobody has changed has no other state.
    await page.getByText('No changes yet').waitFor();
  },
});

/** The tables of law, and what they say beside a formula. */
export const LAW_SCREENS: Screen[] = [
  {
    name: 'substances',
    route: 'substances',
    address: always('/substances'),
    openers: [
      press('add a substance', ['substances/NewSubstance'], 'Add substance'),
      press('add the examples', ['limits/StarterSet'], 'Add the examples…'),
    ],
  },
  {
    name: 'substance',
    route: 'substance',
    address: (records) => records && `/substances/${records.substance}`,
    openers: [
      history('substances/SubstancePane'),
      press('delete a substance', ['record/RecordPane'], 'Delete'),
    ],
  },
  {
    name: 'limits',
    route: 'limits',
    address: always('/limits'),
    openers: [press('add a limit', ['limits/NewLimit'], 'Add limit')],
  },
  {
    name: 'limit',
    route: 'limit',
    address: (records) => records && `/limits/${records.limit}`,
    openers: [history('limits/LimitPane'), press('delete a limit', ['record/RecordPane'], 'Delete')],
  },
];

/** A sheet opened from the drawer that narrow windows have lies over it: each is closed in turn. */
async function closeEach(page: Page): Promise<void> {
  const open = page.locator('[role=dialog]');
  for (let left = await open.count(); left > 0; left -= 1) {
    await page.keyboard.press('Escape');
    await expect(open).toHaveCount(left - 1);
  }
}

/** Beside a formula: law, label with its sheet, exposure and origin. */
export const LAW_TABS: Opener[] = [
  tab('Law'),
  tab('Label'),
  {
    ...sheet('label', ['formulas/LabelPanel'], 'Print…'),
    async open(page) {
      await tab('Label').open(page);
      await button(page, 'Print…').click();
      await page.getByRole('dialog').locator('canvas[data-drawn=yes]').first().waitFor();
    },
    close: closeEach,
  },
  tab('Exposure'),
  {
    ...sheet('exposure', ['formulas/ExposurePanel'], 'Print with natural origin…'),
    async open(page) {
      await tab('Exposure').open(page);
      await button(page, 'Print with natural origin…').click();
      await page.getByRole('dialog').locator('canvas[data-drawn=yes]').first().waitFor();
    },
    close: closeEach,
  },
  tab('Origin'),
];
