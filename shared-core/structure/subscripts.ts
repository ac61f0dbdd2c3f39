/**
 * A chemical formula as chemists write it, its counts lowered: "C21H42O4" as "C₂₁H₄₂O₄", "-(CH2CH2O)-" as
 * "-(CH₂CH₂O)-". Only what follows a symbol or a bracket is a count; what leads, as in "CuSO4·5H2O", stays.
 */
export function withSubscripts(formula: string): string {
  return formula.replace(/(?<=[A-Za-z)\]])\d+/g, (digits) =>
    [...digits].map((digit) => String.fromCodePoint(0x2080 + Number(digit))).join(''),
  );
}
