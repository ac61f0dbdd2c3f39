/**
 * A number as a working shows it: at most six significant digits, no trailing zeros, with a real minus sign.
 * For reading only; nothing is computed from it.
 */
export function show(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  const text = size >= 1e-4 && size < 1e9 ? plain(value) : scientific(value);
  return text.replaceAll('-', '−');
}

/** A term of a sum with its sign kept readable: negative numbers stand in brackets. */
export function showTerm(value: number): string {
  return value < 0 ? `(${show(value)})` : show(value);
}

function plain(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function scientific(value: number): string {
  const [mantissa = '0', exponent = '0'] = value.toExponential(4).split('e');
  const power = Number(exponent);
  return `${Number(mantissa)} × 10^${power}`;
}
