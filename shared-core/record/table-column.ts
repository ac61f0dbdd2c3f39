import type { Cell } from '../tables/table';

/** A column of a table that is saved: what its head says, and what stands in it for one value or record. */
export interface TableColumn<V> {
  heading: string;
  cell(held: V): Cell;
}
