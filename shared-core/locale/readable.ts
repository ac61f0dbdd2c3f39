import { formatNumber, type Decimals, type Region } from './numbers';
import { show } from '../working/show';

const RAISED: Record<string, string> = {
  '-': '⁻',
  '−': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].entries()),
};

function raised(power: string): string {
  return [...power].map((sign) => RAISED[sign] ?? sign).join('');
}

/** A number as the region writes it; one too small for these decimals in powers of ten, never as 0. A minus is a real one. */
export function readableNumber(value: number, region: Region, digits: number | Decimals): string {
  const most = typeof digits === 'number' ? digits : digits.max;
  if (value !== 0 && Math.abs(value) < 10 ** -most)
    return show(value).replace(/\^([−-]?\d+)$/, (_, power: string) => raised(power));
  return formatNumber(value, region, digits).replace('-', '−');
}
