import { onBeforeUnmount, onMounted } from 'vue';

/** A sheet that can be printed here, and whether there is something to print yet. */
interface Printable {
  ready: () => boolean;
  print: () => void;
}

const here: Printable[] = [];

/** While a component stands on the screen, the Print command prints its sheet. */
export function usePrintCommand(printable: Printable): void {
  onMounted(() => here.push(printable));
  onBeforeUnmount(() => here.splice(here.indexOf(printable), 1));
}

/** Prints what was opened last on the screen; false where it has no sheet, or nothing to print yet. */
export function printHere(): boolean {
  const one = here.findLast(({ ready }) => ready());
  one?.print();
  return one !== undefined;
}
