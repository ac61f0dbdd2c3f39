/** A number as text, with a point and every digit; never three decimals alone, which may be read as thousands. */
export function sureNumber(value: number): string {
  const text = String(value).replace(
    /^(-?)(\d)(?:\.(\d+))?e-(\d+)$/,
    (_all, sign: string, first: string, rest: string | undefined, zeros: string) =>
      `${sign}0.${'0'.repeat(Number(zeros) - 1)}${first}${rest ?? ''}`,
  );
  return /^-?\d+\.\d{3}$/.test(text) ? `${text}0` : text;
}
