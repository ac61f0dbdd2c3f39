import { useListPreferences } from '../lists/list-preferences';
import { MATERIALS_VIEW } from './list-view';

/** What this machine keeps of the materials list: its columns, and which materials are picked. */
export function useMaterialsList() {
  const { description, columns, columnsAtFirst } = MATERIALS_VIEW;
  return useListPreferences(
    description.many,
    columns.map(({ key }) => key),
    columnsAtFirst,
  );
}
