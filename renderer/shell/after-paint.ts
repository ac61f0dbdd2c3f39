/** Does something once the next frame is drawn; in a window that is hidden, once it is seen again. */
export function afterPaint(work: () => void): void {
  requestAnimationFrame(() => setTimeout(work));
}
