import type { Material } from '@core/materials/material';
import { materials } from '@db/materials/materials';
import type { RecordRows } from '@db/record/record-table';

/** Materials on their way to where they are computed with. */
export interface Shelf {
  /** All that are meant, each as it stands now. */
  standing: readonly Standing[];
  /** The rows of those that are not held there yet. */
  rows: readonly RecordRows[];
  /** Those that hold other materials: what is within them changes without an edit of their own. */
  nesting: readonly Material[];
}

/** An id, and a stamp that is another after every edit. */
export interface Standing {
  id: string;
  stamp: string;
}

/** The answer where rows are needed first: the ids of those that are not held. */
export interface Lacking {
  lacking: string[];
}

/** Beyond this many, those that a question does not mean are let go. */
const MOST_HELD = 20_000;

/** An edit gives a record both a count and a moment. */
export function stampOf({ revision, updatedAt }: { revision: number; updatedAt: string }): string {
  return `${revision} ${updatedAt}`;
}

/**
 * The materials that were put together before. To read and check a thousand wide records takes longer than to rank them,
 * so that only those that changed since come again.
 */
export class KeptShelf {
  readonly #held = new Map<string, { stamp: string; material: Material }>();

  /** The materials of a shelf in its order, those that hold others last; or what is lacking first. */
  take({ standing, rows, nesting }: Shelf): Material[] | Lacking {
    for (const some of rows)
      for (const material of materials.assemble(some))
        this.#held.set(material.id, { stamp: stampOf(material), material });
    this.#letGo(standing);
    const found: Material[] = [];
    const lacking: string[] = [];
    for (const { id, stamp } of standing) {
      const held = this.#held.get(id);
      if (held?.stamp === stamp) found.push(held.material);
      else lacking.push(id);
    }
    return lacking.length > 0 ? { lacking } : [...found, ...nesting];
  }

  #letGo(standing: readonly Standing[]): void {
    if (this.#held.size <= MOST_HELD) return;
    const meant = new Set(standing.map(({ id }) => id));
    for (const id of this.#held.keys()) if (!meant.has(id)) this.#held.delete(id);
  }
}
