import { blankSubstance, type SubstanceContent } from '../substance';

/** A substance of the starter set as it is written down; what is left out is not known. */
export interface StarterSubstance extends Partial<
  Pick<
    SubstanceContent,
    | 'usName'
    | 'colourIndex'
    | 'cas'
    | 'formula'
    | 'molarMass'
    | 'allergenLabel'
    | 'pod'
    | 'podKind'
    | 'oralBioavailability'
    | 'dermalAbsorption'
    | 'absorbedPerArea'
    | 'safetySource'
    | 'notes'
  >
> {
  name: string;
  also?: readonly string[];
  groups?: readonly string[];
  /** What limits count it as, and how many of it one molecule holds. */
  as?: readonly (readonly [string, number])[];
  allergen?: SubstanceContent['allergenList'];
}

/** A written entry as the library holds it. */
export function starterContent({ also, groups, as, allergen, ...said }: StarterSubstance): SubstanceContent {
  const named = (names: readonly string[] = []) => names.map((name) => ({ name }));
  return {
    ...blankSubstance(said.name),
    ...said,
    synonyms: named(also),
    groups: named(groups),
    equivalents: (as ?? []).map(([countedAs, perMole]) => ({ countedAs, perMole })),
    allergenList: allergen ?? null,
  };
}
