import { chromium, type Browser, type Page } from '@playwright/test';
import { dirname } from 'node:path';
import { rm } from 'node:fs/promises';
import { foldedWords } from '@core/quantities/fold';
import { createListIndex, type ListIndex } from '@core/lists/list-index';
import { listQuery } from '@core/lists/query';
import { MATERIALS_LIST, type MaterialEntry } from '@core/materials/list';
import { otherNames } from '@core/materials/synonyms';
import { BROWSER_ARGUMENTS, findBrowser } from '../../build/steps/browser.mjs';
import { HostProcess } from '../e2e/host-process';
import { entriesOf, makeLibrary } from './bench-library';
import { installProbe } from './browser-probe';
import { figureFrom, type BenchFigure, type BenchSettings } from './measure';
import { Seeded } from './seeded';

const MATERIALS = 5_000;
const ANSWER_LIMIT_MS = 5_000;

interface Keystroke {
  key: string;
  /** How many materials are found once it is typed. */
  found: number;
}

async function findable(folder: string): Promise<{ list: ListIndex<MaterialEntry>; words: string[] }> {
  const entries = await entriesOf(folder);
  return {
    list: createListIndex(MATERIALS_LIST, entries, otherNames),
    words: entries.flatMap((entry) => foldedWords(entry.inci)),
  };
}

/**
 * Words typed letter by letter and taken back the same way. Only letters that change how many are found are
 * taken, so that each keystroke has a result to wait for.
 */
async function keystrokes(folder: string, wanted: number): Promise<Keystroke[]> {
  const { list, words } = await findable(folder);
  const chance = new Seeded(5);
  const count = (text: string): number => list.search(listQuery(MATERIALS_LIST, { text, limit: 0 })).total;
  const strokes: Keystroke[] = [];
  while (strokes.length < wanted) {
    const word = chance.pick(words);
    const found = [count('')];
    for (let length = 1; length <= word.length; length++) {
      const left = count(word.slice(0, length));
      if (left === found[length - 1]) break;
      found.push(left);
    }
    const typed = found.slice(1).map((left, i) => ({ key: word[i] ?? '', found: left }));
    const takenBack = found.slice(0, -1).map((left) => ({ key: 'Backspace', found: left }));
    strokes.push(...typed, ...takenBack.reverse());
  }
  return strokes;
}

/** How long the browser's own windows take to load beside a new tab; what they cost is not the page's. */
const BROWSER_SETTLES_MS = 2_500;

async function openList(browser: Browser, host: HostProcess): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  // The first visit changes the key for a cookie; the page that is measured then starts from an empty tab.
  await host.visit(page);
  await page.goto('about:blank');
  await page.waitForTimeout(BROWSER_SETTLES_MS);
  // The runner's compiler names functions through a helper of its own, which the page does not have.
  await page.addInitScript('globalThis.__name = (value) => value');
  await page.addInitScript(installProbe);
  await page.goto(`${host.origin}/#/materials`);
  return page;
}

async function noted(page: Page, name: 'usableMs' | 'paintedMs'): Promise<number> {
  const handle = await page.waitForFunction((field) => window.stillroomProbe[field], name, {
    timeout: ANSWER_LIMIT_MS,
    polling: 20,
  });
  return Number(await handle.jsonValue());
}

/** A fresh context each time, so nothing of the page is in a cache but what the host itself keeps. */
async function openings(browser: Browser, host: HostProcess, rounds: number): Promise<number[]> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const page = await openList(browser, host);
    times.push(await noted(page, 'usableMs'));
    await page.context().close();
  }
  return times;
}

async function typing(browser: Browser, host: HostProcess, strokes: Keystroke[]): Promise<number[]> {
  const page = await openList(browser, host);
  await noted(page, 'usableMs');
  await page.getByRole('searchbox', { name: 'Search materials' }).focus();
  const times: number[] = [];
  for (const { key, found } of strokes) {
    await page.evaluate((materials) => window.stillroomProbe.expect(materials), found);
    await page.keyboard.press(key);
    times.push(await noted(page, 'paintedMs'));
  }
  await page.context().close();
  return times;
}

/** The list in a real browser over the loopback host: opening it, and each keystroke until its result is painted. */
export async function benchBrowser(settings: BenchSettings): Promise<BenchFigure[]> {
  const program = await findBrowser();
  if (!program) {
    settings.note('no Chromium, Chrome or Edge was found: nothing measured in a browser');
    return [];
  }
  const folder = await makeLibrary(MATERIALS, 0);
  const strokes = await keystrokes(folder, settings.quick ? 40 : 200);
  const host = await HostProcess.start({ args: ['--library', folder], folder: dirname(folder) });
  const browser = await chromium.launch({ executablePath: program, args: BROWSER_ARGUMENTS });
  try {
    const opened = await openings(browser, host, settings.quick ? 5 : 20);
    const typed = await typing(browser, host, strokes);
    return [
      figureFrom('page opened to usable list, 5,000 materials', opened, { atMost: 400 }),
      figureFrom('keystroke to painted result, 5,000 materials', typed, { atMost: 33 }),
    ];
  } finally {
    await browser.close();
    await host.stop();
    await rm(dirname(folder), { recursive: true, force: true });
  }
}
