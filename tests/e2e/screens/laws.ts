import type { Page } from '@playwright/test';

/** What lies over the screen when it is open: questions, choices and lists to choose from. */
export const OPENED = '[role=dialog], .popover, .drop';

/**
 * Looks at a screen as it stands and tells each fault in a line. Runs in the page, in one piece, so that a state is
 * looked at once and no round trips are needed.
 */
function faultsOnScreen(opened: string): string[] {
  const faults: string[] = [];
  const width = document.documentElement.clientWidth;
  const height = window.innerHeight;

  function said(element: Element): string {
    const name = element.getAttribute('aria-label') ?? element.textContent?.trim().replace(/\s+/g, ' ') ?? '';
    const classes = [...element.classList].map((one) => `.${one}`).join('');
    return `<${element.tagName.toLowerCase()}${classes}> “${name.slice(0, 50)}”`;
  }
  const field = '[role=dialog] form :is(input:not([type=file]), textarea, select):not(:disabled)';
  const REACHED = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
  const visible = (element: Element): boolean => element.checkVisibility({ visibilityProperty: true });
  const scrolls = (overflow: string): boolean => overflow === 'auto' || overflow === 'scroll';
  const cuts = (overflow: string): boolean => overflow === 'hidden' || overflow === 'clip';

  function documentStays(): void {
    for (const one of [document.documentElement, document.body])
      if (one.scrollHeight > height + 1 || one.scrollWidth > width + 1)
        faults.push(
          `the document is ${one.scrollWidth} × ${one.scrollHeight} in a window of ${width} × ${height}`,
        );
    if (window.scrollY || window.scrollX) faults.push('the document is scrolled');
  }

  /** A table wider than the window may scroll sideways, when it says so: a named region that takes the focus. */
  function mayScrollSideways(element: Element): boolean {
    const role = element.getAttribute('role');
    return (role === 'group' || role === 'region' || role === 'grid') && element.hasAttribute('aria-label');
  }
  function scroller(element: Element, style: CSSStyleDeclaration): void {
    if (style.position === 'static') faults.push(`the scroller ${said(element)} is not positioned`);
    if (element.scrollWidth > element.clientWidth + 1 && !mayScrollSideways(element))
      faults.push(`${said(element)} scrolls sideways: ${element.scrollWidth} in ${element.clientWidth}`);
  }

  const hasText = (element: Element): boolean =>
    [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim());
  function isTold(element: Element): boolean {
    element.dispatchEvent(new MouseEvent('mouseover', { bubbles: true }));
    return Boolean(element.closest('[title]')?.getAttribute('title'));
  }
  function text(element: HTMLElement, style: CSSStyleDeclaration): void {
    if (style.display === 'inline' || element.clientWidth === 0) return;
    const wide = element.scrollWidth > element.clientWidth + 1;
    if (cuts(style.overflowX) && wide) {
      if (style.textOverflow !== 'ellipsis') faults.push(`cut without an ellipsis: ${said(element)}`);
      else if (!isTold(element)) faults.push(`cut, and nowhere told whole: ${said(element)}`);
    } else if (wide && style.overflowX === 'visible') faults.push(`wider than its place: ${said(element)}`);
    if (cuts(style.overflowY) && element.scrollHeight > element.clientHeight + 3)
      faults.push(`cut in height: ${said(element)}`);
  }
  /** A short word is read as one: its letters stand on one line. */
  const LONGEST_WHOLE = 12;
  function wholeWords(element: Element): void {
    for (const node of element.childNodes) {
      const word = node.nodeType === Node.TEXT_NODE ? (node.textContent?.trim() ?? '') : '';
      if (word.length < 2 || word.length > LONGEST_WHOLE || /\s/.test(word)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const lines = [...range.getClientRects()].filter((box) => box.width > 0);
      const [first] = lines;
      if (first && lines.some((box) => box.top > first.top + first.height / 2))
        faults.push(`broken within a word: ${said(element)}`);
    }
  }
  function placeholder(element: HTMLInputElement): void {
    if (element.value === '' && element.placeholder && element.scrollWidth > element.clientWidth + 1)
      faults.push(`the placeholder “${element.placeholder}” is cut`);
  }

  /** What an element does to those in it, asked once: many stand in the same. */
  interface Around {
    overflowX: string;
    overflowY: string;
    fixed: boolean;
    box: DOMRect;
  }
  const known = new Map<Element, Around>();
  function around(element: Element): Around {
    const before = known.get(element);
    if (before) return before;
    const { overflowX, overflowY, position } = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    const now = { overflowX, overflowY, fixed: position === 'fixed', box };
    known.set(element, now);
    return now;
  }
  function isReached(element: Element, style: CSSStyleDeclaration): boolean {
    let { left, right, top, bottom } = element.getBoundingClientRect();
    let fixed = style.position === 'fixed';
    for (let above = element.parentElement; above && !fixed; above = above.parentElement) {
      const { overflowX, overflowY, box, fixed: stays } = around(above);
      if (scrolls(overflowX)) {
        const from = left - box.left + above.scrollLeft;
        if (from < -1 || from + right - left > above.scrollWidth + 1) return false;
        [left, right] = [box.left, box.right];
      } else if (overflowX !== 'visible' && (left < box.left - 2 || right > box.right + 2)) return false;
      if (scrolls(overflowY)) {
        const from = top - box.top + above.scrollTop;
        if (from < -1 || from + bottom - top > above.scrollHeight + 1) return false;
        [top, bottom] = [box.top, box.bottom];
      } else if (overflowY !== 'visible' && (top < box.top - 2 || bottom > box.bottom + 2)) return false;
      fixed = stays;
    }
    return left >= -1 && top >= -1 && right <= width + 1 && bottom <= height + 1;
  }

  /** Who types to find something sees what is typed: neither its list nor a bar lies over the field. */
  function fieldInUse(): void {
    const at = document.activeElement;
    if (!at?.matches('input[role=combobox][aria-expanded=true]')) return;
    const { left, top, width: wide, height: high } = at.getBoundingClientRect();
    const seen = document.elementFromPoint(left + wide / 2, top + high / 2);
    if (seen !== at) faults.push(`what is typed lies under ${seen ? said(seen) : 'the edge of the window'}`);
  }

  function surface(element: Element): void {
    const style = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    if (/^(transparent|rgba\(.*, 0\))$/.test(style.backgroundColor))
      faults.push(`no surface: ${said(element)}`);
    if (style.boxShadow === 'none' && parseFloat(style.borderTopWidth) === 0)
      faults.push(`no edge: ${said(element)}`);
    if (parseFloat(style.paddingTop) === 0 && !element.matches('.drop'))
      faults.push(`no room around its content: ${said(element)}`);
    if (box.left < 0 || box.top < 0 || box.right > width || box.bottom > height)
      faults.push(
        `leaves the window: ${said(element)} at ${[box.left, box.top, box.right, box.bottom].map(Math.round).join(' ')}`,
      );
    for (const [x, y] of [
      [box.left + 6, box.top + 6],
      [box.right - 6, box.top + 6],
      [box.left + 6, box.bottom - 6],
      [box.right - 6, box.bottom - 6],
    ] as const) {
      const top = document.elementFromPoint(x, y);
      if (top && !element.contains(top) && !top.closest(opened))
        faults.push(`${said(element)} lies under ${said(top)}`);
    }
    if (!element.matches('.drop') && !element.contains(document.activeElement))
      faults.push(`the focus is not in ${said(element)}`);
    const begins = document.activeElement;
    const first = element.querySelector(field);
    if (begins?.getAttribute('aria-label') === 'Close' && first && first.role !== 'combobox')
      faults.push(`one must leave the cross to fill in ${said(element)}`);
  }

  documentStays();
  fieldInUse();
  // Of dialogs that lie over one another the last is on top; those under it were looked at without it.
  const isDialog = (one: Element): boolean => one.matches('[role=dialog]');
  const all = [...document.querySelectorAll(opened)].filter(visible);
  const onTop = all.filter(isDialog).at(-1);
  const over = all.filter((one) => !isDialog(one) || one === onTop);
  over.forEach(surface);
  /** Drawings, and what is only for those who cannot see, are left out with all that they hold. */
  function isLookedInto(element: Element): boolean {
    return !element.matches('svg, canvas, .visually-hidden, .skip');
  }
  // What lies under a dialog was looked at without it.
  const within = document.createTreeWalker(onTop ?? document.body, NodeFilter.SHOW_ELEMENT, (node) =>
    isLookedInto(node as Element) ? NodeFilter.FILTER_ACCEPT : NodeFilter.FILTER_REJECT,
  );
  // Itself too: a dialog may be what scrolls sideways.
  for (let node: Node | null = within.currentNode; node; node = within.nextNode()) {
    const element = node as HTMLElement;
    if (!visible(element)) continue;
    const style = getComputedStyle(element);
    if (scrolls(style.overflowX) || scrolls(style.overflowY)) {
      if (!element.matches('input, textarea, select')) scroller(element, style);
    }
    if (element instanceof HTMLInputElement) placeholder(element);
    else if (hasText(element) && !element.matches('option, textarea, select')) {
      text(element, style);
      wholeWords(element);
    }
    if (element.matches(REACHED) && !isReached(element, style)) faults.push(`out of reach: ${said(element)}`);
  }
  return [...new Set(faults)];
}

/** The faults of the screen as it stands, one a line. */
export function faultsOf(page: Page): Promise<string[]> {
  return page.evaluate(faultsOnScreen, OPENED);
}
