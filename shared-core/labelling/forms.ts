import { regionsOf } from '../limits/situation';
import type { Market } from '../products/market';
import type { LabelForm } from './substance-names';

/** The forms of label that a product needs where it is sold: that of the United States there, the EU's elsewhere. */
export function labelFormsOf(market: Market): LabelForm[] {
  const regions = regionsOf(market);
  const forms: LabelForm[] = [];
  if (regions.some((region) => region !== 'US')) forms.push('EU');
  if (regions.includes('US')) forms.push('US');
  return forms;
}
