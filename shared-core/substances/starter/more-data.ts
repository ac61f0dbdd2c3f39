import { PUBLISHED_HANSEN } from '../../solubility/published-parameters';
import { KNOWN_CMR } from '../classes';
import { nameKey } from '../names';
import { blankSubstance, type SubstanceContent } from '../substance';

const HANSEN_BY_NAME = new Map(PUBLISHED_HANSEN.map(([inci, of]) => [nameKey(inci), of]));
const CMR_BY_NAME = new Map(Object.entries(KNOWN_CMR).map(([name, cmr]) => [nameKey(name), cmr]));

const HANSEN_SOURCES = {
  published:
    'Hansen C.M., Hansen Solubility Parameters: A User’s Handbook, 2nd ed. 2007, tables; not verified',
  computed: 'estimated from groups, after Hoftyzer and van Krevelen',
} as const;

const namesOf = (one: SubstanceContent): string[] =>
  [one.name, one.usName, one.colourIndex, ...one.synonyms.map(({ name }) => name)]
    .filter((name) => name !== '')
    .map(nameKey);

/** What is known by the first of its names that anything is known by. */
const knownBy = <T>(known: ReadonlyMap<string, T>, one: SubstanceContent): T | undefined =>
  namesOf(one).flatMap((name) => known.get(name) ?? [])[0];

/** An example with what is known of its class and of its solubility. */
export function withKnownData(one: SubstanceContent): SubstanceContent {
  const hansen = knownBy(HANSEN_BY_NAME, one);
  return {
    ...one,
    cmrClass: one.cmrClass ?? knownBy(CMR_BY_NAME, one) ?? null,
    ...(hansen
      ? {
          hansenD: hansen.d,
          hansenP: hansen.p,
          hansenH: hansen.h,
          hansenRadius: hansen.radius,
          hansenSource: HANSEN_SOURCES[hansen.basis],
        }
      : {}),
  };
}

/** Substances of which only their class or their solubility is known, and that none of the others is. */
export function onlyKnownData(others: readonly SubstanceContent[]): SubstanceContent[] {
  const names = new Set(others.flatMap(namesOf));
  const more = [...PUBLISHED_HANSEN.map(([inci]) => inci), ...Object.keys(KNOWN_CMR)];
  return [...new Set(more)].filter((name) => !names.has(nameKey(name))).map(blankSubstance);
}
