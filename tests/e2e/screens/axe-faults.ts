import type { Page } from '@playwright/test';
import axe from 'axe-core';
import { appearanceOf } from './appearance';
import { OPENED } from './laws';
import type { State } from './walk';

interface Violation {
  id: string;
  nodes: { target: string[] }[];
}

const COLOURS = { runOnly: ['color-contrast'] };
const ALL_BUT_COLOURS = { rules: { 'color-contrast': { enabled: false } } };

/**
 * Whether axe is asked of a state: in the widest window, in the dark too, and in the narrowest. A screen is read with every
 * detail unfolded, which holds what it shows when folded.
 */
function isRead({ opened, whole, width }: State): boolean {
  // The lists that are found by typing are all the same.
  if ((opened === '' && !whole) || /^list (?!1$)/.test(opened)) return false;
  return width === 1440 || width === 390;
}

/** What axe has read in this process: the same markup, and the same colours on the same ground, are read once. */
const read = new Set<string>();

function areNew(keys: string[]): boolean {
  const before = read.size;
  for (const key of keys) read.add(key);
  return read.size > before;
}

/** Which rules a state has something new for: null for none, an empty object for all. */
async function rulesFor(page: Page, within: string, scheme: State['scheme']): Promise<object | null> {
  const { markup, colours } = await appearanceOf(page, within);
  const otherColours = areNew(colours.map((one) => `${scheme} ${one}`));
  // In the dark nothing differs but colours.
  const otherMarkup = scheme === 'light' && areNew([markup]);
  if (otherMarkup) return otherColours ? {} : ALL_BUT_COLOURS;
  return otherColours ? COLOURS : null;
}

/** Where what is open stands: over the screen, or in its place on it. */
async function placeOf(page: Page, beside: string | undefined): Promise<string> {
  if ((await page.locator(OPENED).count()) > 0) return OPENED;
  return beside && (await page.locator(beside).count()) > 0 ? beside : ':root';
}

/** What axe finds in a state that it has not read yet, a line each. */
export async function axeFaults(page: Page, state: State): Promise<string[]> {
  if (!isRead(state)) return [];
  const within = state.whole ? ':root' : await placeOf(page, state.beside);
  const rules = await rulesFor(page, within, state.scheme);
  if (!rules) return [];
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const asked = { within, rules };
  const violations = await page.evaluate(async ({ within, rules }) => {
    const on = document.querySelector(within);
    const run = Reflect.get(window, 'axe') as {
      run(on: Node, options: object): Promise<{ violations: Violation[] }>;
    };
    // No rule in use reads the style sheets, which axe would fetch anew each time.
    const options = { resultTypes: ['violations'], preload: false, ...rules };
    return (await run.run(on ?? document, options)).violations.map(({ id, nodes }) => ({ id, nodes }));
  }, asked);
  return violations.map(
    ({ id, nodes }) =>
      `axe ${id} at ${nodes
        .map((node) => node.target.join(' '))
        .slice(0, 3)
        .join('; ')}`,
  );
}
