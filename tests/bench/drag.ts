import { chromium, type Page } from '@playwright/test';
import { join } from 'node:path';
import { BROWSER_ARGUMENTS, findBrowser } from '../../build/steps/browser.mjs';
import { chooseFormula } from '../e2e/choose-formula';
import { HostProcess, removeFolder, temporaryFolder } from '../e2e/host-process';
import { figureFrom, type BenchFigure, type BenchSettings } from './measure';

declare global {
  interface Window {
    /** Ms from the last key to each repaint of the HLB scale since. */
    stillroomRepaints: number[];
  }
}

const SETTLED_MS = 120;

/** Puts the demonstration cream's oils and two emulsifiers on the bench. */
async function setBench(page: Page, origin: string): Promise<void> {
  await page.goto(`${origin}/#/bench`);
  await page.getByRole('button', { name: 'Take from a formula' }).click();
  await chooseFormula(page, 'Hedgerow Day Cream');
  await page.getByRole('button', { name: 'Take the oil phase' }).click();
  for (const name of ['Pibberley 60', 'Pearthistle GS']) {
    await page.getByRole('combobox', { name: 'Add an emulsifier' }).fill(name);
    await page.getByRole('listbox').getByRole('option').filter({ hasText: name }).first().click();
  }
}

/** Runs in the page: notes when the scale was painted anew, taken as the task after the next frame. */
function watchScale(): void {
  let pressedAt = 0;
  window.stillroomRepaints = [];
  window.addEventListener('keydown', (event) => (pressedAt = event.timeStamp), { capture: true });
  const scale = document.querySelector('[role=img][aria-label*="HLB scale"]');
  if (!scale) throw new Error('There is no HLB scale on the bench.');
  new MutationObserver(() =>
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => window.stillroomRepaints.push(performance.now() - pressedAt);
      port2.postMessage(null);
    }),
  ).observe(scale, { subtree: true, childList: true, attributes: true, characterData: true });
}

async function steps(page: Page, count: number): Promise<number[]> {
  const share = page.getByRole('slider', { name: 'Share of Pibberley 60' });
  await share.focus();
  await page.evaluate(watchScale);
  const times: number[] = [];
  for (let step = 0; step < count; step++) {
    await page.evaluate(() => (window.stillroomRepaints.length = 0));
    await page.keyboard.press(step % 40 < 20 ? 'ArrowRight' : 'ArrowLeft');
    await page.waitForFunction(() => window.stillroomRepaints.length > 0);
    await page.waitForTimeout(SETTLED_MS);
    const repaints = await page.evaluate(() => window.stillroomRepaints);
    // The last one of a step: by then everything that the step changes is on screen.
    times.push(Math.max(...repaints));
  }
  return times;
}

/** A step of a share on the bench until the HLB scale is painted anew, in a real browser over the loopback host. */
export async function benchDrag(settings: BenchSettings): Promise<BenchFigure[]> {
  const program = await findBrowser();
  if (!program) {
    settings.note('no Chromium, Chrome or Edge was found: the drag was not measured');
    return [];
  }
  const folder = temporaryFolder();
  const host = await HostProcess.start({ args: ['--library', join(folder, 'library')], folder });
  await host.post('/api/library/create', { name: 'library', kind: 'demonstration' });
  const browser = await chromium.launch({ executablePath: program, args: BROWSER_ARGUMENTS });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await host.visit(page);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await setBench(page, host.origin);
    const times = await steps(page, settings.quick ? 40 : 120);
    return [figureFrom('a share dragged a step until the scale is repainted', times, { atMost: 33 })];
  } finally {
    await browser.close();
    await host.stop();
    removeFolder(folder);
  }
}
