/** What the page notes for us: when its list was usable, and when a search that we wait for was painted. */
export interface Probe {
  /** Ms from the start of navigation until the first row of the list was painted. */
  usableMs: number | null;
  /** Ms from the last keydown until the awaited result was painted. */
  paintedMs: number | null;
  /** Waits for a list of so many materials to be painted. */
  expect(materials: number): void;
}

declare global {
  interface Window {
    stillroomProbe: Probe;
  }
}

/**
 * Runs in the page before its own scripts. A mutation is taken as painted in the task after the next frame; a
 * keystroke's time is the browser's own time stamp of the event.
 */
export function installProbe(): void {
  let pressedAt = 0;
  let awaited: string | null = null;
  const probe: Probe = {
    usableMs: null,
    paintedMs: null,
    expect: (materials) => {
      probe.paintedMs = null;
      // The head is a row of the grid too.
      awaited = String(materials + 1);
    },
  };
  const afterPaint = (note: () => void): void => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = note;
      port2.postMessage(null);
    });
  };
  const look = (): void => {
    const grid = document.querySelector('[role=grid]');
    const filled = grid
      ?.querySelector('[aria-rowindex="2"] [role=gridcell]:nth-child(2)')
      ?.textContent?.trim();
    if (!grid || !filled) return;
    if (probe.usableMs === null) afterPaint(() => (probe.usableMs ??= performance.now()));
    if (awaited === null || grid.getAttribute('aria-rowcount') !== awaited) return;
    awaited = null;
    const from = pressedAt;
    afterPaint(() => (probe.paintedMs = performance.now() - from));
  };
  window.stillroomProbe = probe;
  window.addEventListener('keydown', (event) => (pressedAt = event.timeStamp), { capture: true });
  new MutationObserver(look).observe(document, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
  });
}
