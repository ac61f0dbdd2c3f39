import type { Locator, Page } from '@playwright/test';

/** Identifiers of records that a library holds, for the addresses of its screens. */
export interface Records {
  materials: string[];
  formula: string;
  /** Another formula than that. */
  other: string;
  version: string;
  batch: string;
  /** A material that was changed after a version froze it. */
  used: string;
  /** One with a group and an acid that it is counted as, and a limit on that group. */
  substance: string;
  limit: string;
}

export interface Opener {
  name: string;
  /** The components whose dialog, popover or list it opens, under `renderer/`. */
  components: string[];
  open(page: Page): Promise<void>;
  /** Whether this library has it, where an empty one has not. */
  there?(page: Page): Promise<boolean>;
  /** Where what it shows stands when nothing lies over the screen; the whole screen when left out. */
  beside?: string;
  /** Takes back what opening it changed, where Escape does not. */
  close?(page: Page): Promise<void>;
}

export interface Screen {
  name: string;
  /** The name of its route in `renderer/shell/router.ts`. */
  route: string;
  /** Its address; null in a library that lacks what it shows. */
  address(records: Records | null): string | null;
  /** Brings it to the state that is looked at, once it is open. */
  prepare?(page: Page): Promise<void>;
  openers?: Opener[];
}

export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first();

export function press(name: string, components: string[], buttonName: string | RegExp = name): Opener {
  return { name, components, open: (page) => button(page, buttonName).click() };
}

/** What opens once a file is chosen. */
export function attach(name: string, components: string[], label: RegExp): Opener {
  const file = { name: 'Swatch.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.4') };
  return { name, components, open: (page) => page.getByLabel(label).setInputFiles(file) };
}

/** A sheet's preview, once its first page is drawn. */
export function sheet(name: string, components: string[], buttonName: string | RegExp): Opener {
  return {
    name,
    components: [...components, 'sheets/SheetPreview'],
    async open(page) {
      await button(page, buttonName).click();
      await page.getByRole('dialog').locator('canvas[data-drawn=yes]').first().waitFor();
    },
  };
}

export function tab(name: string): Opener {
  return {
    name: `${name} beside the formula`,
    components: ['formulas/SidePanel', 'formulas/FormulaPage'],
    beside: '.side',
    async open(page) {
      const drawer = button(page, /^Checks ?\d*$/);
      if (await drawer.isVisible()) await drawer.click();
      await page.getByRole('tab', { name }).click();
    },
  };
}

/** Opens the list of a field that finds materials or formulas; an empty library says that there is none. */
export async function openList(page: Page, box: Locator): Promise<void> {
  await box.fill('e');
  const found = page.getByRole('listbox').getByRole('option').first();
  await found
    .or(page.getByText(/No (material begins|formula matches)/).first())
    .first()
    .waitFor();
}

export const finder: Opener = {
  name: 'finder',
  components: ['shell/Palette'],
  async open(page) {
    await page.keyboard.press('Control+k');
    await page.getByRole('listbox').getByRole('option').first().waitFor();
  },
};
