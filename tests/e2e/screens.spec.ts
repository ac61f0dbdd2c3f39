import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures';
import type { HostProcess } from './host-process';
import { ContactSheet } from './screens/contact-sheet';
import { recordsOf } from './screens/records';
import { SCREENS } from './screens/screens';
import type { Records, Screen } from './screens/openers';
import { every, goTo, held, HELD_AGAIN, lawsInto, walkScreen, WINDOWS, type Extent } from './screens/walk';

// Every screen in every window, light and dark, with everything opened that opens on it. What is found is told all at
// once, a line each.

const RENDERER = resolve(import.meta.dirname, '../../renderer');

/** Set by `npm run pictures`: the screens are then drawn as contact sheets, and not held to the laws. */
const SHEETS = process.env.STILLROOM_CONTACT_SHEETS;
/** The one width to draw, or every one. */
const WIDTH = Number(process.env.STILLROOM_CONTACT_WIDTH ?? 0);
const DRAWN = WINDOWS.filter(({ width }) => !WIDTH || width === WIDTH);

async function drawScreens(
  page: Page,
  host: HostProcess,
  screens: readonly Screen[],
  records: Records | null,
): Promise<void> {
  test.setTimeout(0);
  for (const screen of screens) {
    const sheet = new ContactSheet();
    if (!(await goTo(page, host, screen, records))) continue;
    await walkScreen(page, screen, sheet.look, every(DRAWN));
    await sheet.write(page.context(), join(SHEETS ?? '', test.info().titlePath.at(1) ?? '', screen.name));
  }
}

/** Routes whose screens grow with the library. */
const LONG = new Set(['home', 'materials', 'formulas', 'bench', 'library']);
const MOST_SCREENS = 4;

/** A route's screens, a few at a time, so that the walks take about as long. */
const GROUPS = [...new Set(SCREENS.map((screen) => screen.route))].flatMap((route) => {
  const screens = SCREENS.filter((screen) => screen.route === route);
  const parts = Math.ceil(screens.length / MOST_SCREENS);
  return Array.from({ length: parts }, (_, part) => ({
    route,
    part: parts > 1 ? ` ${part + 1} of ${parts}` : '',
    screens: screens.slice(part * MOST_SCREENS, (part + 1) * MOST_SCREENS),
  }));
});

/** Walks some screens, and tells every fault at once. */
async function expectLawful(
  page: Page,
  host: HostProcess,
  screens: readonly Screen[],
  records: Records | null,
  extent: Extent,
): Promise<void> {
  if (SHEETS) return drawScreens(page, host, screens, records);
  const faults: string[] = [];
  // Whatever is waited for has its own limit; this one only ends a walk that hangs, on however busy a machine.
  test.setTimeout(15 * 60_000);
  for (const screen of screens)
    await test.step(screen.name, async () => {
      if (await goTo(page, host, screen, records)) await walkScreen(page, screen, lawsInto(faults), extent);
    });
  expect(faults).toEqual([]);
}

test.describe('an empty library', () => {
  test.use({ opening: 'empty' });
  test('nothing scrolls away, is cut off, out of reach, or opens without a surface', async ({
    page,
    stillroom,
  }) => {
    await expectLawful(page, stillroom.host, SCREENS, null, HELD_AGAIN);
  });
});

test.describe('5,000 materials', () => {
  test.use({ opening: 'many' });
  test('nothing scrolls away, is cut off, out of reach, or opens without a surface', async ({
    page,
    stillroom,
  }) => {
    await expectLawful(
      page,
      stillroom.host,
      SCREENS.filter((screen) => LONG.has(screen.route)),
      null,
      HELD_AGAIN,
    );
  });
});

test.describe('the demonstration', () => {
  test.use({ opening: 'demo' });
  for (const { route, part, screens } of GROUPS)
    test(`${route}${part}: nothing scrolls away, is cut off, out of reach, or opens without a surface`, async ({
      page,
      stillroom,
    }) => {
      await expectLawful(page, stillroom.host, screens, await recordsOf(stillroom.host), held());
    });
});

test('every route of the shell is among the screens', () => {
  const router = readFileSync(join(RENDERER, 'shell/router.ts'), 'utf8');
  const names = [...router.matchAll(/name: '(\w+)'/g)].map(([, name]) => name);
  expect(names.length).toBeGreaterThan(10);
  // The first screen needs a start of its own.
  const seen = new Set([...SCREENS.map((screen) => screen.route), 'welcome']);
  expect(names.filter((name) => name && !seen.has(name))).toEqual([]);
});

test('every component that opens something is opened on one of them', () => {
  const files = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' }).filter((file) =>
    /\.vue$/.test(file),
  );
  const opening = files.filter((file) =>
    /import (Dialog|Popover|SheetPreview) from|role="(combobox|menu|dialog)"|(Dialog|Popover|Menu|Combobox|Select|Tabs)Root/.test(
      readFileSync(join(RENDERER, file), 'utf8'),
    ),
  );
  const opened = new Set(SCREENS.flatMap((one) => one.openers ?? []).flatMap((one) => one.components));
  // The kit is what the others are made of; the lists that are found by typing are opened wherever they stand.
  const elsewhere = (file: string): boolean =>
    file.startsWith('kit/') || file === 'glossary/TermMark.vue' || /^formulas\/\w+Picker$/.test(file);
  const missing = opening
    .map((file) => file.replace('.vue', ''))
    .filter((file) => !opened.has(file) && !elsewhere(file));
  expect(missing).toEqual([]);
});
