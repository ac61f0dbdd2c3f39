/**
 * Our words for the hazard statements of the Globally Harmonized System (United Nations, annex 3: the H codes). Those that
 * say nothing of our words are left out. From memory.
 */
const STATEMENTS: readonly [RegExp, string][] = [
  [/^H22[4-8]$/, 'flammable'],
  [/^H27[0-2]$/, 'oxidiser'],
  [/^H314$/, 'caustic'],
  [/^H(315|318|319|335)/, 'irritant'],
  [/^H(317|334)/, 'sensitiser'],
  [/^H(300|301|302|310|311|312|330|331|332)/, 'harmful undiluted'],
];
const CODE = /\b(?:EU)?H\s?(\d{3})[A-Za-z]?\b/g;
const DENIED =
  /\b(?:not|no|none|kein|keine|nicht|non|aucune?|ningun|ninguna|sin)\b[^.;]*(?:classif|hazard|eingestuft|einstufung|gefähr|dangere|clasific|peligr)/i;

/** The hazards that a text states by their codes, in our words; none where it denies that there are any. */
export function hazardsStated(text: string): string[] {
  if (DENIED.test(text)) return [];
  const codes = [...text.matchAll(CODE)].map(([, digits]) => `H${digits ?? ''}`);
  return [
    ...new Set(STATEMENTS.flatMap(([code, word]) => (codes.some((one) => code.test(one)) ? [word] : []))),
  ];
}
