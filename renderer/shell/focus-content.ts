/** Where the focus stands that no screen has taken: nowhere, or still in the navigation. */
function isLeft(at: Element | null, fromNavigation: boolean): boolean {
  return !at || at === document.body || (fromNavigation && at.closest('nav') !== null);
}

/**
 * Lets the keys go on in the screen that was gone to, so that nobody walks through the navigation to reach it. A screen
 * or dialog that has taken the focus itself keeps it.
 *
 * @param byKeys gone to by keys: the focus then leaves the navigation too; who pressed a link there stays at it
 */
export function focusContent(byKeys: boolean): void {
  // What closed gives the focus back once it is gone.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      if (!isLeft(document.activeElement, byKeys)) return;
      document.getElementById('main')?.focus({ preventScroll: true });
    }),
  );
}
