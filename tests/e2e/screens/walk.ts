import type { Page, Request } from '@playwright/test';
import axe from 'axe-core';
import type { HostProcess } from '../host-process';
import { unwantedIn } from '../../unit/words/unwanted-words';
import { faultsOf, OPENED } from './laws';
import { openList, type Opener, type Records, type Screen } from './openers';

/** A desktop, a small laptop, a desktop at 200 %, a telephone. */
export const WINDOWS = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 720, height: 450 },
  { width: 390, height: 844 },
] as const;

/** The widest and the narrowest: enough for a page that is a text and some buttons. */
export const WIDEST_AND_NARROWEST = [WINDOWS[0], WINDOWS[3]] as const;

export interface State {
  screen: string;
  /** What is open on it. */
  opened: string;
  width: number;
  scheme: 'light' | 'dark';
}

/** Does something with each state that is reached; the walk goes on when it returns. */
export type Look = (page: Page, state: State) => Promise<void>;

const EVERY_DETAIL: Opener = {
  name: 'every detail unfolded',
  components: [],
  async open(page) {
    // Some hold others.
    for (let round = 0; round < 3; round += 1)
      await page.evaluate(async () => {
        for (const one of document.querySelectorAll<HTMLDetailsElement>('main details:not([open])'))
          one.open = true;
        await new Promise(requestAnimationFrame);
      });
  },
  async close(page) {
    await page.evaluate(() => {
      for (const one of document.querySelectorAll<HTMLDetailsElement>('main details[open]')) one.open = false;
    });
  },
};

async function lists(page: Page): Promise<Opener[]> {
  const boxes = page.locator('main').getByRole('combobox').and(page.locator('input:visible'));
  const count = await boxes.count();
  return Array.from({ length: count }, (_, index) => ({
    name: `list ${index + 1}`,
    components: ['formulas/MaterialPicker'],
    open: () => openList(page, boxes.nth(index)),
    async close() {
      await boxes.nth(index).press('Escape');
      await boxes.nth(index).fill('');
      await boxes.nth(index).press('Escape');
    },
  }));
}

const underWay = new WeakMap<Page, Set<Request>>();
const QUIET_MS = 60;

function requestsOf(page: Page): Set<Request> {
  const known = underWay.get(page);
  if (known) return known;
  const requests = new Set<Request>();
  underWay.set(page, requests);
  // The stream of changes stays open for as long as the page does.
  page.on('request', (request) => request.url().endsWith('/api/changes') || requests.add(request));
  page.on('requestfinished', (request) => requests.delete(request));
  page.on('requestfailed', (request) => requests.delete(request));
  return requests;
}

/** Waits until nothing is under way and what was asked for is drawn; a new address loads nothing by itself. */
export async function settled(page: Page): Promise<void> {
  const requests = requestsOf(page);
  await page.locator('main h1, main h2').first().waitFor();
  do await page.waitForTimeout(QUIET_MS);
  while (requests.size > 0);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

async function withOpened(page: Page, opener: Opener, look: () => Promise<void>): Promise<void> {
  if (opener.there && !(await opener.there(page))) return;
  await opener.open(page);
  await settled(page);
  await look();
  if (opener.close) await opener.close(page);
  else {
    await page.keyboard.press('Escape');
    await page.locator(OPENED).first().waitFor({ state: 'detached' });
  }
}

/** Goes to a screen and brings it to its state; false where the library lacks what it shows. */
export async function goTo(
  page: Page,
  host: HostProcess,
  screen: Screen,
  records: Records | null,
): Promise<boolean> {
  const address = screen.address(records);
  if (address === null) return false;
  requestsOf(page);
  await page.goto(`${host.origin}/#${address}`);
  await settled(page);
  await screen.prepare?.(page);
  await settled(page);
  return true;
}

/** Shows one screen in every window, light and dark, with each thing opened that opens on it. */
export async function walkScreen(
  page: Page,
  screen: Screen,
  look: Look,
  windows: readonly { width: number; height: number }[] = WINDOWS,
): Promise<void> {
  for (const { width, height } of windows) {
    await page.setViewportSize({ width, height });
    await settled(page);
    const both = async (opened: string): Promise<void> => {
      for (const scheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme: scheme });
        await look(page, { screen: screen.name, opened, width, scheme });
      }
      await page.emulateMedia({ colorScheme: 'light' });
    };
    await both('');
    for (const opener of [...(screen.openers ?? []), EVERY_DETAIL, ...(await lists(page))])
      await withOpened(page, opener, () => both(opener.name));
  }
}

interface Violation {
  id: string;
  nodes: { target: string[] }[];
}

/** Where axe looks, and by which rules: all when `rules` is null. */
interface AxeLook {
  within: string | null;
  rules: object | null;
}
const COLOURS = { runOnly: ['color-contrast'] };
const ALL_BUT_COLOURS = { rules: { 'color-contrast': { enabled: false } } };

/**
 * What axe is asked of a state; null when it holds nothing that another does not. All its rules in the widest window;
 * colours alone in the dark, where nothing else differs; all else in the narrowest, where colours are the same. A screen is
 * read with every detail unfolded, which holds what it shows when folded.
 */
function axeLook({ opened, width, scheme }: State, coloured: boolean): AxeLook | null {
  // The lists that are found by typing are all the same.
  if (opened === '' || /^list (?!1$)/.test(opened)) return null;
  const within = opened === EVERY_DETAIL.name ? null : OPENED;
  if (width === 1440 && scheme === 'light') return { within, rules: null };
  if (width === 1440) return coloured ? { within, rules: COLOURS } : null;
  return width === 390 && scheme === 'light' ? { within, rules: ALL_BUT_COLOURS } : null;
}

async function axeFaults(page: Page, look: AxeLook): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const violations = await page.evaluate(async ({ within, rules }) => {
    const on = within ? document.querySelector(within) : null;
    const run = Reflect.get(window, 'axe') as {
      run(on: Node, options: object): Promise<{ violations: Violation[] }>;
    };
    const options = { resultTypes: ['violations'], ...rules };
    return (await run.run(on ?? document, options)).violations.map(({ id, nodes }) => ({ id, nodes }));
  }, look);
  return violations.map(
    ({ id, nodes }) =>
      `axe ${id} at ${nodes
        .map((node) => node.target.join(' '))
        .slice(0, 3)
        .join('; ')}`,
  );
}

/** What a screen says: its text, and the names, hints and titles that it gives to what it shows. */
function saidOn(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const named = [...document.querySelectorAll('[aria-label], [title], [placeholder]')];
    const names = named.flatMap((one) =>
      ['aria-label', 'title', 'placeholder'].map((name) => one.getAttribute(name) ?? ''),
    );
    return [...document.body.innerText.split('\n'), ...names].filter((one) => one.trim() !== '');
  });
}

/**
 * Faults by the laws in every window, and by axe.
 * @param coloured whether colours in the dark are looked at too: once is enough for what every library shows
 */
export function lawsInto(faults: string[], coloured: boolean): Look {
  return async (page, state) => {
    const found = state.scheme === 'light' ? await faultsOf(page) : [];
    const look = axeLook(state, coloured);
    if (look) found.push(...(await axeFaults(page, look)));
    if (state.width === 1440 && state.scheme === 'light')
      found.push(...(await saidOn(page)).flatMap(unwantedIn));
    const place = [state.screen, state.opened, `${state.width} px`, state.scheme].filter(Boolean).join(' · ');
    faults.push(...found.map((fault) => `${place}: ${fault}`));
  };
}
