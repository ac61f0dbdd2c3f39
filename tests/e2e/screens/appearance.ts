import type { Page } from '@playwright/test';

interface Appearance {
  /** A digest of the markup, without generated identifiers, and of what of it is shown and scrolls. */
  markup: string;
  /** Each way in which a text stands out: its colour, whether it is large, and the grounds under it. */
  colours: string[];
}

/** Runs in the page. */
async function appearance(within: string): Promise<Appearance> {
  const root = document.querySelector(within) ?? document.documentElement;

  const grounds = new Map<Element, string>();
  /** The grounds from an element down to one that covers all beneath. */
  function groundUnder(element: Element | null): string {
    if (!element) return 'nothing';
    const before = grounds.get(element);
    if (before !== undefined) return before;
    const { backgroundColor, backgroundImage, opacity, position } = getComputedStyle(element);
    const covers = /^rgb\(/.test(backgroundColor) && opacity === '1';
    const own = [backgroundColor, backgroundImage, opacity].join(' ');
    // What is placed over others has a ground that its ancestors do not tell.
    const placed = !covers && (position === 'absolute' || position === 'fixed');
    const beneath = covers ? '' : placed ? `${element.outerHTML}` : groundUnder(element.parentElement);
    const all = own === 'rgba(0, 0, 0, 0) none 1' ? beneath : `${own} < ${beneath}`;
    grounds.set(element, all);
    return all;
  }

  // As WCAG 2.2 defines large text: 18 points, or 14 in bold.
  const LARGE_PX = 24;
  const LARGE_BOLD_PX = 18.66;
  const colours = new Set<string>();
  const shown: string[] = [];
  for (const element of [root, ...root.querySelectorAll<HTMLElement>('*')]) {
    const visible = element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    const wide = element.scrollWidth > element.clientWidth;
    const high = element.scrollHeight > element.clientHeight;
    shown.push(`${Number(visible)}${Number(wide)}${Number(high)}`);
    // axe reads neither the colours of what cannot be used nor of what is only for those who cannot see.
    if (
      !visible ||
      element.matches(':disabled, [aria-disabled=true] *, .visually-hidden, .visually-hidden *')
    )
      continue;
    const says = [...element.childNodes].some(
      (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim(),
    );
    if (!says && !element.matches('input, textarea, select')) continue;
    const { color, fontSize, fontWeight, textShadow } = getComputedStyle(element);
    const size = parseFloat(fontSize);
    const large = size >= LARGE_PX || (size >= LARGE_BOLD_PX && Number(fontWeight) >= 700);
    colours.add([color, large ? 'large' : 'small', textShadow, groundUnder(element)].join(' '));
  }

  const markup = root.outerHTML.replace(/(reka|v)-[\w-]*\d[\w-]*/g, '#') + shown.join('');
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(markup));
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { markup: hex, colours: [...colours] };
}

/** What axe would judge what is first found by a selector by: where nothing of it is new, neither is what axe says. */
export function appearanceOf(page: Page, within: string): Promise<Appearance> {
  return page.evaluate(appearance, within);
}
