import type { BrowserContext, Page } from '@playwright/test';
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Look, State } from './walk';

interface Picture {
  says: string;
  png: Buffer;
}

/** As many as can be looked at on one sheet. */
const ON_A_SHEET = 12;

async function scrollAll(page: Page, to: 'end' | 'top'): Promise<void> {
  await page.evaluate((end) => {
    for (const one of document.querySelectorAll('main *'))
      if (one.scrollHeight > one.clientHeight && getComputedStyle(one).overflowY === 'auto')
        one.scrollTop = end ? one.scrollHeight : 0;
  }, to === 'end');
}

/** Pictures of one screen's states, drawn side by side for someone who looks at all of them. */
export class ContactSheet {
  private readonly pictures: Picture[] = [];

  private async take(page: Page, { opened, width, scheme }: State, how: string): Promise<void> {
    const says = [opened, `${width} px`, scheme, how].filter(Boolean).join(' · ');
    this.pictures.push({ says, png: await page.screenshot() });
  }

  /** Takes each state; a screen itself also scrolled to its end. */
  readonly look: Look = async (page, state) => {
    await this.take(page, state, '');
    if (state.opened !== '' || state.scheme === 'dark') return;
    await scrollAll(page, 'end');
    await this.take(page, state, 'at its end');
    await scrollAll(page, 'top');
  };

  /** Writes `<path> 1.png` and so on. */
  async write(context: BrowserContext, path: string): Promise<void> {
    mkdirSync(dirname(path), { recursive: true });
    const paper = await context.newPage();
    await paper.setViewportSize({ width: 1800, height: 900 });
    for (let from = 0; from < this.pictures.length; from += ON_A_SHEET) {
      const figures = this.pictures
        .slice(from, from + ON_A_SHEET)
        .map(
          ({ says, png }) =>
            `<figure><img src="data:image/png;base64,${png.toString('base64')}"><figcaption>${says}</figcaption></figure>`,
        );
      await paper.setContent(`<style>
        body { display: grid; grid-template-columns: repeat(4, 1fr); gap: 16px; margin: 16px; font: 13px sans-serif; }
        figure { margin: 0; } img { max-width: 100%; max-height: 560px; border: 1px solid #888; }
      </style>${figures.join('')}`);
      await paper.screenshot({ path: `${path} ${from / ON_A_SHEET + 1}.png`, fullPage: true });
    }
    await paper.close();
  }
}
