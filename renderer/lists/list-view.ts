import type { ListDescription, ListEntry } from '@core/lists/description';
import type { RecordKind } from '@core/record/change';
import type { FoundKind } from '@core/lists/found';
import type { RouteLocationRaw } from 'vue-router';
import type { useNumbers } from '../settings/numbers';

export type Show = ReturnType<typeof useNumbers>;

/** A column of a list. It is sorted by where the noun's description has a sort key of this name. */
export interface Column<Row> {
  key: string;
  title: string;
  /** The narrowest the column gets, in rem. */
  rem: number;
  /** How much of the room to spare it takes; none keeps it at its narrowest. */
  grow?: number;
  number?: boolean;
  /** Set in the face of codes and numbers. */
  code?: boolean;
  text(row: Row, show: Show): string;
  /** Where the cell leads by itself; null for a cell that leads nowhere. */
  to?(row: Row): RouteLocationRaw | null;
  /** What such a cell is called, where its text alone does not say. */
  label?(row: Row): string;
}

/** How the list of a noun is shown. */
export interface ListView<Row extends ListEntry> {
  description: ListDescription;
  /** The noun, by which the service knows the list. */
  noun: FoundKind;
  /** Where the service answers it. */
  path: string;
  /** The kinds of records whose changes it shows. */
  kinds: readonly RecordKind[];
  /** The table's name, and what can be searched, said in the empty box. */
  title: string;
  placeholder: string;
  columns: readonly Column<Row>[];
  columnsAtFirst: readonly string[];
  /** The filters whose words show from the start. */
  unfolded: readonly string[];
  /** In px; rows that hold buttons need more. */
  rowHeight: number;
  /** Whether rows can be picked, for what is done with several. */
  picks: boolean;
}

/** The tick's column and, where rows hold buttons of their own, theirs; in rem. */
const PICK_REM = 2.1;

/** The columns that have room side by side; those that have none are left out, the first one never. */
export function columnsWithRoom<Row>(
  columns: readonly Column<Row>[],
  rem: number,
  besides: number,
): Column<Row>[] {
  let left = rem - besides;
  return columns.filter((column, at) => {
    if (at > 0 && column.rem > left) return false;
    left -= column.rem;
    return true;
  });
}

/** The grid tracks of columns, behind one for the tick and before one for the row's own buttons. */
export function gridTracks<Row>(columns: readonly Column<Row>[], picks: boolean, actsRem: number): string {
  const track = ({ rem, grow }: Column<Row>): string => (grow ? `minmax(${rem}rem, ${grow}fr)` : `${rem}rem`);
  return [
    ...(picks ? [`${PICK_REM}rem`] : []),
    ...columns.map(track),
    ...(actsRem > 0 ? [`${actsRem}rem`] : []),
  ].join(' ');
}

/** What the tick and the row's own buttons take, in rem. */
export function besidesColumns(picks: boolean, actsRem: number): number {
  return (picks ? PICK_REM : 0) + actsRem;
}
