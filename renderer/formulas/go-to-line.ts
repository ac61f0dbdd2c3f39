/** Brings a line of the ledger into sight and puts the focus on it. */
export function goToLine(lineId: string): void {
  const row = document.querySelector<HTMLElement>(`[data-line="${CSS.escape(lineId)}"]`);
  row?.scrollIntoView({ block: 'center' });
  row?.querySelector<HTMLElement>('[data-cell=percent] input, button')?.focus();
}
