import { readabilityDigits } from '../locale/mass';
import { formatNumber, type Region } from '../locale/numbers';
import { MG_PER_G } from '../quantities/mass';
import type { SmallLine } from './small-lines';

/** A mass in grams, as the working of a premix has it: mg beside g are soon read for each other. */
function grams(mg: number, region: Region, digits: { min: number; max: number }): string {
  return `${formatNumber(mg / MG_PER_G, region, digits)}\u00a0g`;
}

/**
 * What a line asks for and what the balance makes of it: "0.06 g asked for, 0.1 g by this balance (+66.7 %), below its
 * minimum weight".
 *
 * @param readabilityMg the balance's step, mg
 */
export function smallLineWords(line: SmallLine, readabilityMg: number, region: Region): string {
  const { exactMg, targetMg, roundingPpm, belowMinimum } = line;
  const digits = readabilityDigits(readabilityMg, 'g');
  const asked = grams(exactMg, region, { min: digits, max: digits + 2 });
  const size = formatNumber(Math.abs(roundingPpm) / 10_000, region, { min: 0, max: 1 });
  const off = size === '0' ? '' : ` (${roundingPpm < 0 ? '−' : '+'}${size}\u00a0%)`;
  const below = belowMinimum ? ', below its minimum weight' : '';
  return `${asked} asked for, ${grams(targetMg, region, { min: digits, max: digits })} by this balance${off}${below}`;
}

/** How much of its mixture goes into the batch: "12.0 g of a mixture of 1 part in 200". */
export function premixWords(
  { takeMg, parts }: { takeMg: number; parts: number },
  readabilityMg: number,
  region: Region,
): string {
  const digits = readabilityDigits(readabilityMg, 'g');
  const taken = grams(takeMg, region, { min: digits, max: digits });
  return `${taken} of a mixture of 1\u00a0part in\u00a0${formatNumber(parts, region)}`;
}
