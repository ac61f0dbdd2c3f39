import type { FormulaContent } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import { formatMoney } from '../locale/money';
import { formatNumber, formatPercent, formatShare } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import type { Material } from '../materials/material';
import { minorDigits } from '../quantities/money';
import type { Currency } from '../quantities/money';
import { WHOLE_PPM } from '../quantities/share';
import type { Worked, WorkingStep } from '../working/working';
import { isPriced, newestPrice, pricePerKgMinor, type PricedOffer } from './offers';

export type NoCostReason = 'material missing' | 'no price' | 'priced in another currency';

export interface CostGap {
  materialId: string;
  /** Empty when the material is no longer in the library. */
  tradeName: string;
  ppm: number;
  reason: NoCostReason;
}

export interface FormulaCost {
  currency: Currency;
  /** Raw-material cost of the priced lines, in minor units per kg of formula, unrounded. */
  perKgMinor: number;
  /** The share of the formula that has a price, in ppm. */
  coveredPpm: number;
  gaps: CostGap[];
  /** The same cost in whole units of the currency per kg, step by step. */
  worked: Worked;
}

type MaterialSource = Readonly<Record<string, Pick<Material, 'tradeName' | 'offers'> | undefined>>;
type Priced = { ppm: number; tradeName: string; offer: PricedOffer };

function sortLines(content: FormulaContent, materials: MaterialSource, currency: Currency) {
  const shares = formulaShares(content).byLine;
  const priced: Priced[] = [];
  const gaps: CostGap[] = [];
  for (const line of formulaLines(content)) {
    const ppm = Math.max(0, shares.get(line.id) ?? 0);
    const known = materials[line.materialId];
    const offer = known ? newestPrice(known.offers, currency) : null;
    if (known && offer) priced.push({ ppm, tradeName: known.tradeName, offer });
    else {
      const reason: NoCostReason = !known
        ? 'material missing'
        : known.offers.some(isPriced)
          ? 'priced in another currency'
          : 'no price';
      gaps.push({ materialId: line.materialId, tradeName: known?.tradeName ?? '', ppm, reason });
    }
  }
  return { priced, gaps };
}

function gapCautions(gaps: CostGap[], coveredPpm: number, region: Region): string[] {
  if (gaps.length === 0) return [];
  const named = gaps.map(
    (gap) => `${gap.tradeName || 'a material no longer in the library'} (${gap.reason})`,
  );
  return [
    `Covers ${formatPercent(coveredPpm, region)} of the formula. Left out: ${[...new Set(named)].join(', ')}.`,
  ];
}

/**
 * Raw-material cost per kg of a formula, from each material's newest offer in one currency.
 * Materials without a price, or priced only in other currencies, are named and left out, never guessed.
 *
 * @param materials by id; a material may be missing under a draft
 * @param currency the one currency counted; nothing is converted
 */
export function formulaCost(
  content: FormulaContent,
  materials: MaterialSource,
  currency: Currency,
  region: Region = 'en-GB',
): FormulaCost {
  const { priced, gaps } = sortLines(content, materials, currency);
  const whole = 10 ** minorDigits(currency);
  const steps: WorkingStep[] = priced.map(({ ppm, tradeName, offer }) => {
    const perKg = pricePerKgMinor(offer);
    return {
      says: `${tradeName}, offer of ${offer.date}`,
      shows: `${formatShare(ppm, region)} % × ${formatMoney(perKg, currency, region)}/kg`,
      result: ((ppm / WHOLE_PPM) * perKg) / whole,
      unit: `${currency}/kg`,
    };
  });
  const perKgMinor = priced.reduce(
    (sum, line) => sum + (line.ppm / WHOLE_PPM) * pricePerKgMinor(line.offer),
    0,
  );
  const coveredPpm = priced.reduce((sum, line) => sum + line.ppm, 0);
  steps.push({
    says: 'sum of the priced lines',
    shows: steps.map((step) => formatNumber(step.result, region, { min: 2, max: 4 })).join(' + ') || '0',
    result: perKgMinor / whole,
    unit: `${currency}/kg`,
  });
  return {
    currency,
    perKgMinor,
    coveredPpm,
    gaps,
    worked: {
      value: perKgMinor / whole,
      unit: `${currency}/kg`,
      steps,
      sources: [{ text: 'share × price per kg, summed; the offers are the maker’s own', basis: 'user' }],
      cautions: [
        ...gapCautions(gaps, coveredPpm, region),
        'Raw materials only: no packaging, labour or loss.',
      ],
    },
  };
}
