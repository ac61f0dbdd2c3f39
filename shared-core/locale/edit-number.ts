import { decimalSign, type Region } from './numbers';

/** A number as it stands in a field for editing: the region's decimal sign, no thousands marks, no padding zeros. */
export function editNumber(value: number, region: Region, mostDigits = 4): string {
  const text = value.toFixed(mostDigits);
  const short = text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
  return (short === '-0' ? '0' : short).replace('.', decimalSign(region));
}
