/** A number as text, with a point and every digit; never three decimals alone, which may be read as thousands. */
export function sureNumber(value: number): string {
  const text = String(value);
  return /^-?\d+\.\d{3}$/.test(text) ? `${text}0` : text;
}
