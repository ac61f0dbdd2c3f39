import type { MaterialRow } from '@core/materials/list';
import type { FoundMaterial } from './suggestions';

type Meant = (row: Pick<MaterialRow, 'functions' | 'requiredHlbOw' | 'phaseOfUse'>) => boolean;

/**
 * What a field asks for, by what a material's row tells; any other can be chosen there too. An oil is what the bench takes
 * for one (`isOil`), as far as the row tells it.
 */
export const MEANT = {
  emulsifier: ({ functions }) => functions.includes('emulsifier') || functions.includes('co-emulsifier'),
  oil: ({ functions, requiredHlbOw, phaseOfUse }) =>
    !functions.includes('emulsifier') &&
    (requiredHlbOw !== null || (functions.includes('emollient') && phaseOfUse === 'oil')),
} satisfies Record<string, Meant>;

/**
 * Those that a field asks for before the others, each as near as they came. One that is called just as was typed stays
 * first, and one that only mentions it in its notes stays behind.
 * @param typed what stands in the field
 */
export function meantFirst(
  found: readonly FoundMaterial[],
  kind: keyof typeof MEANT,
  typed: string,
): FoundMaterial[] {
  const name = typed.trim().toLowerCase();
  const place = ({ row, near }: FoundMaterial): number => {
    if (near === 'code' || row.tradeName.toLowerCase() === name) return 0;
    if (near === 'unshown') return 3;
    return MEANT[kind](row) ? 1 : 2;
  };
  return [...found].sort((a, b) => place(a) - place(b));
}
