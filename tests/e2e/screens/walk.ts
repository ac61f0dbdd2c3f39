import type { Page } from '@playwright/test';
import type { HostProcess } from '../host-process';
import { unwantedIn } from '../../unit/words/unwanted-words';
import { isAlikeIn } from './alike';
import { axeFaults } from './axe-faults';
import { faultsOf, OPENED } from './laws';
import { openList, type Opener, type Records, type Screen } from './openers';
import { followRequests, settled } from './settled';

export interface Window {
  width: number;
  height: number;
}

/** A desktop, a small laptop, a desktop at 200 %, a telephone. */
export const WINDOWS = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 720, height: 450 },
  { width: 390, height: 844 },
] as const satisfies Window[];
const [WIDEST, SMALL_LAPTOP, , NARROWEST] = WINDOWS;

/** Enough for a page that is a text and some buttons. */
export const WIDEST_AND_NARROWEST: readonly Window[] = [WIDEST, NARROWEST];

type Scheme = 'light' | 'dark';

export interface State {
  screen: string;
  /** What is open on it. */
  opened: string;
  /** Whether it is the screen itself, with nothing left folded. */
  whole: boolean;
  /** Where what is open stands, if it lies not over the screen. */
  beside?: string;
  width: number;
  scheme: Scheme;
}

/** How far a walk goes. */
export interface Extent {
  windows: readonly Window[];
  /** Of these, where what opens is opened. */
  opening: readonly Window[];
  /** Whether a dialog that the small laptop shows as the desktop does is left out there. */
  sparing: boolean;
  schemes(state: Omit<State, 'scheme'>): readonly Scheme[];
}

const LIGHT: readonly Scheme[] = ['light'];
const BOTH: readonly Scheme[] = ['light', 'dark'];

/** Every state in every window, light and dark: for pictures. */
export function every(windows: readonly Window[]): Extent {
  return { windows, opening: windows, sparing: false, schemes: () => BOTH };
}

/** Set to look at all that opens in every window, whether or not another shows the same. */
const EVERY_WINDOW = Boolean(process.env.STILLROOM_EVERY_WINDOW);

/**
 * What the laws are held in: in the dark only colours differ, which one window tells.
 * @param opening where what opens is opened
 */
export function held(windows: readonly Window[] = WINDOWS, opening = windows): Extent {
  return {
    windows,
    opening: EVERY_WINDOW ? windows : opening,
    sparing: !EVERY_WINDOW,
    schemes: (state) => (state.width === WIDEST.width && (state.whole || state.opened !== '') ? BOTH : LIGHT),
  };
}

/**
 * What a library is held in that has other records than the demonstration, where every dialog is looked at in every window
 * and in the dark: the screens themselves differ everywhere, what opens on them in how much it holds.
 */
export const HELD_AGAIN: Extent = { ...held(WINDOWS, WIDEST_AND_NARROWEST), schemes: () => LIGHT };

/** Does something with each state that is reached; the walk goes on when it returns. */
export type Look = (page: Page, state: State) => Promise<void>;

const FOLDED = 'main details:not([open])';

/** Unfolds every detail, those within others too. */
async function unfold(page: Page): Promise<void> {
  await page.evaluate(async (selector) => {
    for (;;) {
      const folded = document.querySelectorAll<HTMLDetailsElement>(selector);
      if (folded.length === 0) return;
      for (const one of folded) one.open = true;
      await new Promise(requestAnimationFrame);
    }
  }, FOLDED);
}

async function fold(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const one of document.querySelectorAll<HTMLDetailsElement>('main details[open]')) one.open = false;
  });
}

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

/** Changes the scheme of the system, and waits until the page wears it: a frame later. */
async function wear(page: Page, scheme: Scheme): Promise<void> {
  await page.emulateMedia({ colorScheme: scheme });
  await page.locator(`html[data-theme=${scheme}]`).waitFor({ state: 'attached' });
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
  followRequests(page);
  await page.goto(`${host.origin}/#${address}`);
  await settled(page);
  if (screen.prepare) {
    await screen.prepare(page);
    await settled(page);
  }
  return true;
}

/** Shows one screen in every window of the extent, with each thing opened that opens on it. */
export async function walkScreen(page: Page, screen: Screen, look: Look, extent: Extent): Promise<void> {
  const spared = new Set<Opener>();
  for (const window of extent.windows) {
    const { width } = window;
    await page.setViewportSize(window);
    await settled(page);
    const show = async (opened: string, whole: boolean, beside?: string): Promise<void> => {
      const state = { screen: screen.name, opened, whole, beside, width };
      for (const scheme of extent.schemes(state)) {
        if (scheme === 'dark') await wear(page, 'dark');
        await look(page, { ...state, scheme });
        if (scheme === 'dark') await wear(page, 'light');
      }
    };
    await showItself(page, show);
    if (!extent.opening.includes(window)) continue;
    for (const opener of [...(screen.openers ?? []), ...(await lists(page))]) {
      if (width === SMALL_LAPTOP.width && spared.has(opener)) continue;
      await withOpened(page, opener, async () => {
        await show(opener.name, false, opener.beside);
        if (extent.sparing && width === WIDEST.width && (await isAlikeIn(page, SMALL_LAPTOP.width)))
          spared.add(opener);
      });
    }
  }
}

/** The screen itself: as it comes, and with every detail unfolded, where it has any. */
async function showItself(
  page: Page,
  show: (opened: string, whole: boolean) => Promise<void>,
): Promise<void> {
  const folded = (await page.locator(FOLDED).count()) > 0;
  await show('', !folded);
  if (!folded) return;
  await unfold(page);
  await settled(page);
  await show('every detail unfolded', true);
  await fold(page);
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

/** Faults by the laws in every window, by axe, and by the words that users must not meet. */
export function lawsInto(faults: string[]): Look {
  return async (page, state) => {
    const found = state.scheme === 'light' ? await faultsOf(page) : [];
    found.push(...(await axeFaults(page, state)));
    if (state.width === WIDEST.width && state.scheme === 'light')
      found.push(...(await saidOn(page)).flatMap(unwantedIn));
    const place = [state.screen, state.opened, `${state.width} px`, state.scheme].filter(Boolean).join(' · ');
    faults.push(...found.map((fault) => `${place}: ${fault}`));
  };
}
