import { z } from 'zod';
import { allergenAmount, allergenLabelOf, declarable } from '../labelling/allergens';
import { inLabelOrder, summedByName } from '../labelling/order';
import { LABEL_FORMS } from '../labelling/substance-names';
import { shareOfLimit } from '../limits/share-of-limit';
import { ppmFromPercent } from '../quantities/share';
import { expressedAs } from '../substances/counted-as';
import { starterSubstances } from '../substances/starter/starter-substances';
import { substanceIndex } from '../substances/substance-index';
import { nonNegative } from '../working/inputs';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const text = z.string('must be a text');
const yesNo = z.boolean('must be true or false');
const flag = yesNo.nullish().transform((value) => value ?? false);

const source = z.object({
  percent: number,
  constituents: z.array(z.object({ label: text, sharePercent: number }), 'must be a list'),
});
const line = z.object({ inci: text, percent: number, colorant: flag, activeDrug: flag });

/** The name that a constituent is declared by: that of its group, or null for one that is on no list. */
function labelOf(written: string): string | null {
  const known = substanceIndex(TABLE).find(written);
  return known ? allergenLabelOf(known, '2023') : written;
}
const TABLE = starterSubstances().map((one, at) => ({ ...one, id: String(at) }));

/** Limits and label, each through the function that the screens use. */
export const LAW_KINDS: Readonly<Record<string, Kind>> = {
  'expressed-as': kind(
    z.object({ percent: number, formula: text, referenceFormula: text, referencePerMole: number }),
    (i) => expressedAs(i.percent, i.formula, i.referenceFormula, i.referencePerMole).value,
  ),
  'legal-check': kind(
    z.object({
      substances: z.array(z.object({ percent: number, factor: number }), 'must be a list'),
      limitPercent: number,
    }),
    (i) => ({ ...shareOfLimit(i.substances, i.limitPercent) }),
  ),
  'allergen-amount': kind(z.object({ fragrancePercent: number, sharePercent: number }), (i) =>
    allergenAmount(
      nonNegative(i.fragrancePercent, 'The share of the fragrance'),
      nonNegative(i.sharePercent, 'The share of the allergen'),
    ),
  ),
  'allergens-declared': kind(
    z.object({ rinseOff: yesNo, sources: z.array(source, 'must be a list') }),
    ({ rinseOff, sources }) => {
      const contents = sources.flatMap(({ percent, constituents }) =>
        constituents.flatMap(({ label: written, sharePercent }) => {
          const label = labelOf(written);
          const ppm = allergenAmount(percent, sharePercent) * 10_000;
          return label === null ? [] : [{ label, ppm, materialIds: [], substances: [] }];
        }),
      );
      const { declared } = declarable(contents, rinseOff ? 'rinse-off' : 'leave-on');
      return declared.map(({ label }) => label).sort((a, b) => a.localeCompare(b, 'en'));
    },
  ),
  'ingredient-order': kind(
    z.object({ region: z.enum(LABEL_FORMS, 'must be EU or US'), lines: z.array(line, 'must be a list') }),
    ({ region, lines }) => {
      const placed = lines.map(({ inci, percent, ...rest }) => ({
        ...rest,
        name: inci,
        ppm: ppmFromPercent(nonNegative(percent, 'A share')),
      }));
      return inLabelOrder(summedByName(placed), region).map(({ name }) => name);
    },
  ),
};
