import type { Page } from '@playwright/test';
import { OPENED } from './laws';

interface Asked {
  opened: string;
  narrower: number;
}

/** Runs in the page. */
function isAlike({ opened, narrower }: Asked): boolean {
  const now = document.documentElement.clientWidth;
  const REM = parseFloat(getComputedStyle(document.documentElement).fontSize);
  const EDGE = 2 * REM;

  /** Whether a media query may answer differently in the narrower window; one that we cannot read may. */
  function mayChange(query: string): boolean {
    // Written by hand as “max-width: 46rem”, and by the build as “width <= 46rem”.
    const widths = [...query.matchAll(/width\s*(?::|[<>]=?)\s*([\d.]+)(rem|px)/g)];
    if (widths.length === 0) return query.includes('width');
    return widths.some(([, size, unit]) => {
      const at = Number(size) * (unit === 'rem' ? REM : 1);
      return at >= narrower && at <= now;
    });
  }
  function selectorsThatChange(rules: CSSRuleList, changing: boolean): string[] {
    return [...rules].flatMap((rule) => {
      if (rule instanceof CSSStyleRule) return changing ? [rule.selectorText] : [];
      if (!(rule instanceof CSSGroupingRule)) return [];
      const changes = rule instanceof CSSMediaRule && mayChange(rule.media.mediaText);
      return selectorsThatChange(rule.cssRules, changing || changes);
    });
  }

  const all = [...document.querySelectorAll(opened)].filter((one) => one.checkVisibility());
  const [dialog] = all;
  if (!dialog || all.length > 1 || !dialog.matches('[role=dialog]')) return false;
  const { left, right } = dialog.getBoundingClientRect();
  if (Math.abs(left - (now - right)) > 2 || right - left > narrower - EDGE) return false;
  const changing = [...document.styleSheets].flatMap((sheet) => selectorsThatChange(sheet.cssRules, false));
  return !changing.some((one) => dialog.matches(one) || dialog.querySelector(one) !== null);
}

/**
 * Whether what is open is one dialog that a window of such width shows as this one does: it stands in the middle, fits
 * there as it is, and no style within it changes in between. A lower window only scrolls it further: the lowest shows that.
 */
export function isAlikeIn(page: Page, width: number): Promise<boolean> {
  return page.evaluate(isAlike, { opened: OPENED, narrower: width });
}
