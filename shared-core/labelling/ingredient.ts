import type { IngredientGroup } from './order';

export interface Ingredient {
  name: string;
  /** Content in ppm of the formula; a supplier's range counts at its midpoint. */
  ppm: number;
  lowPpm: number;
  highPpm: number;
  /** True where a supplier's range went into `ppm`. */
  estimated: boolean;
  group: IngredientGroup;
  colorant: boolean;
  /** An active of a drug sold without prescription, such as the UV filter of a sunscreen in the United States. */
  activeDrug: boolean;
  /** Declared because it passes the threshold for fragrance allergens. */
  allergen: boolean;
  /** False where no substance of the table goes by this name. */
  known: boolean;
  materialIds: string[];
}
