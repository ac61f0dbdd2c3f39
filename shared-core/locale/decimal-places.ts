import { decimalSign, type Region } from './numbers';

/** How many digits a written number has behind its decimal sign. */
export function decimalPlaces(written: string, region: Region): number {
  const at = written.lastIndexOf(decimalSign(region));
  return at < 0 ? 0 : written.length - at - 1;
}

/**
 * What a written number lacks behind it to stand on the decimal sign of its column when all are set to the right:
 * "" for "0.25", ".00" for "5".
 *
 * @param places the most digits behind the sign that a number of the column has
 */
export function missingPlaces(written: string, places: number, region: Region): string {
  const own = decimalPlaces(written, region);
  return `${own === 0 && places > 0 ? decimalSign(region) : ''}${'0'.repeat(Math.max(0, places - own))}`;
}
