import { autoUpdate, computePosition, flip, offset, shift, size } from '@floating-ui/dom';
import { watch, type Ref } from 'vue';

/** Room left to the edge of the window, in px. */
const EDGE = 8;

async function place(field: HTMLElement, panel: HTMLElement): Promise<void> {
  const { x, y } = await computePosition(field, panel, {
    strategy: 'fixed',
    placement: 'bottom-start',
    middleware: [
      // The ring around the field that has the focus stays whole.
      offset(5),
      flip({ padding: EDGE }),
      shift({ padding: EDGE }),
      size({
        padding: EDGE,
        apply({ availableHeight }) {
          panel.style.maxHeight = `${Math.max(120, availableHeight)}px`;
        },
      }),
    ],
  });
  panel.style.left = `${x}px`;
  panel.style.top = `${y}px`;
}

/** Keeps what opens from a field inside the window: under it, or over it where more room is, and no higher than that. */
export function usePlacedUnder(field: Ref<HTMLElement | null>, panel: Ref<HTMLElement | null>): void {
  watch(
    panel,
    (opened, _before, whenClosed) => {
      const from = field.value;
      if (opened && from) whenClosed(autoUpdate(from, opened, () => void place(from, opened)));
    },
    { flush: 'post' },
  );
}
