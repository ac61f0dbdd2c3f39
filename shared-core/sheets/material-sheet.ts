import { hazardWords } from '../materials/hazards';
import { formatDate, formatMoment } from '../locale/dates';
import { formatPercent } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import { FIGURE_KINDS, FIGURE_NAMES } from '../materials/figure';
import { partPpm } from '../materials/composition';
import type { Material } from '../materials/material';
import { FIRST_AID, HAZARD_CAUTIONS } from './cautions';
import { blanks } from './kit/by-hand';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { factList } from './kit/facts';
import type { Fact } from './kit/facts';
import { contentWidth, sheet } from './kit/page';
import type { SheetFrame, SheetSettings } from './kit/page';
import { blankCell, cell, figureCell, headed, ruledTable } from './kit/tables';
import { heading, keptTogether, numberText, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { MATERIAL_FIELDS } from '../materials/fields';
import { documentWords, figureWords, offerWords, storageWords } from '../materials/words';
import { sheetFacts } from '../record/words';
import { looksNode } from './form-picture';
import type { SheetPhoto } from './photo';
import { capital } from '../locale/words';

function compositionSection(material: Material, region: Region, width: number): SheetNode[] {
  const ranges = material.composition.some((part) => part.lowPpm !== part.highPpm);
  const show = (ppm: number): string => formatPercent(ppm, region);
  const rows = [...material.composition]
    .sort((a, b) => partPpm(b) - partPpm(a))
    .map((part) => {
      const exact = part.lowPpm === part.highPpm;
      const inci = cell(part.inci);
      if (!ranges) return [inci, figureCell(show(part.lowPpm))];
      const given = exact ? show(part.lowPpm) : `${show(part.lowPpm)} – ${show(part.highPpm)}`;
      return [inci, figureCell(given), figureCell(`${exact ? '' : 'about '}${show(partPpm(part))}`)];
    });
  const right = 'right' as const;
  const columns = ranges
    ? [
        { head: 'INCI name', share: 6 },
        { head: 'Share, as supplied', share: 3, alignment: right },
        { head: 'Used in computing', share: 2.4, alignment: right },
      ]
    : [
        { head: 'INCI name', share: 6 },
        { head: 'Share', share: 2, alignment: right },
      ];
  return [
    ...headed('Composition', ruledTable({ columns, rows, width })),
    ...(ranges ? [remark('Where the supplier gives a range, its midpoint is used and is an estimate.')] : []),
  ];
}

/** The sections whose fields are told in one list beside the photo. */
const USE_SECTIONS = ['identity', 'behaviour', 'usage'];

function useFacts(material: Material, region: Region): Fact[] {
  return sheetFacts(MATERIAL_FIELDS, USE_SECTIONS, material, region);
}

function figuresSection(material: Material, region: Region, width: number): SheetNode[] {
  const known = FIGURE_NAMES.flatMap((kind) => {
    const figure = material.figures[kind];
    return figure ? [{ kind, figure }] : [];
  });
  if (known.length === 0) return [];
  return headed(
    'Figures',
    ruledTable({
      width,
      columns: [
        { head: 'Property', share: 3 },
        { head: 'Value', share: 2.4, alignment: 'right' },
        { head: 'How known', share: 1.6 },
        { head: 'Source', share: 3.4 },
      ],
      rows: known.map(({ kind, figure }) => [
        cell(FIGURE_KINDS[kind].label),
        figureCell(figureWords(kind, figure, region)),
        cell(capital(figure.provenance)),
        cell(figure.source),
      ]),
    }),
  );
}

function safetySection(material: Material, region: Region, width: number): SheetNode[] {
  const { legalLimit, allergens, handling } = material;
  const limit = legalLimit
    ? `${formatPercent(legalLimit.ppm, region)} of the finished product; ${[legalLimit.note, legalLimit.source].filter(Boolean).join('; ')}. As recorded; check the law in force.`
    : '';
  const facts = factList(
    [
      { label: 'Legal limit', value: limit },
      { label: 'Hazards', value: material.hazards.length > 0 ? '' : hazardWords(material) },
      { label: 'Handling', value: handling },
      {
        label: 'Fragrance allergens',
        value: allergens.map((one) => `${one.inci} ${formatPercent(one.ppm, region)}`).join(', '),
      },
    ],
    width,
  );
  const cautions = material.hazards.map((hazard) => HAZARD_CAUTIONS[hazard]);
  if (cautions.length === 0 && !facts) return [];
  return [
    heading('Safety and handling'),
    ...(facts ? [facts] : []),
    ...cautionBox(
      cautions.length > 0
        ? [...cautions, FIRST_AID, 'The supplier’s safety data sheet and local rules go before this.']
        : [],
      width,
    ),
  ];
}

function supplySection(material: Material, region: Region, width: number): SheetNode[] {
  const offers = [...material.offers].sort((a, b) => b.date.localeCompare(a.date));
  if (offers.length === 0) return [];
  return headed(
    'Suppliers and prices',
    ruledTable({
      width,
      columns: [
        { head: 'Supplier', share: 3 },
        { head: 'Item code', share: 2 },
        { head: 'Pack', share: 1.2, alignment: 'right' },
        { head: 'Price', share: 1.5, alignment: 'right' },
        { head: 'Per kg', share: 1.5, alignment: 'right' },
        { head: 'Date', share: 1.6, alignment: 'right' },
      ],
      rows: offers.map((offer) => {
        const [supplier, code, pack, price, perKg, date] = offerWords(offer, region);
        return [
          cell(supplier),
          numberText(code),
          ...[pack, price, perKg, date].map((text) => figureCell(text)),
        ];
      }),
    }),
  );
}

// What a delivery is identified by: ISO 22716:2007, 6.3–6.7 (from memory).
function receiptSection(width: number): SheetNode {
  const columns = ['Received', 'Supplier’s lot', 'Our lot', 'Quantity', 'Accepted / rejected', 'By'];
  return keptTogether(
    heading('Deliveries checked against this sheet'),
    ruledTable({
      width,
      rowHeight: 22,
      columns: columns.map((head, index) => ({ head, share: index === 5 ? 1 : 1.4, byHand: true })),
      rows: Array.from({ length: 4 }, () => columns.map(() => blankCell())),
    }),
    { stack: [blanks(['Sheet checked by', 'Date'], width)], margin: [0, 6, 0, 0] },
  );
}

/** What a specification shows besides its material. */
export interface SheetOfMaterial {
  photo?: SheetPhoto | null;
  /** The number of its issue; null where it is not issued as it is, left out where that is not asked. */
  issue?: number | null;
}

const issueText = (issue: number | null): string => (issue === null ? 'Not issued as it is' : String(issue));

/** The specification of a raw material. @param printedAt ISO 8601 */
export function materialSheet(
  material: Material,
  settings: SheetSettings,
  printedAt: string,
  { photo = null, issue }: SheetOfMaterial = {},
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const frame: SheetFrame = {
    kind: 'Raw-material specification',
    title: material.tradeName,
    // Its issue, or the day of its last change, tells two prints apart; how often it was saved tells nobody anything.
    number: [material.code, issue ? `issue ${issue}` : `as of ${formatDate(material.updatedAt, region)}`]
      .filter(Boolean)
      .join(', '),
    settings,
    printedAt,
  };
  const looks = looksNode(photo, material, 118, 118);
  const picture = photo ? 118 : looks ? 72 : 0;
  const use = factList(useFacts(material, region), width - picture - (picture ? 12 : 0));
  const storage = factList(
    [
      { label: 'Keep', value: storageWords(material.storage, region) },
      { label: 'Documents', value: documentWords(material.documents, region) },
    ],
    width,
  );
  return sheet(frame, [
    ...titleBlock(frame, [
      { label: 'Code', value: material.code ? numberText(material.code) : '' },
      ...(issue === undefined ? [] : [{ label: 'Issue', value: issueText(issue) }]),
      { label: 'Status', value: capital(material.status) },
      { label: 'Last changed', value: formatMoment(material.updatedAt, region) },
    ]),
    ...compositionSection(material, region, width),
    ...(use || looks
      ? [
          heading('What it is and does'),
          {
            columnGap: 12,
            columns: [
              { stack: use ? [use] : [], width: width - picture - (picture ? 12 : 0) },
              ...(looks ? [looks] : []),
            ],
          },
        ]
      : []),
    ...figuresSection(material, region, width),
    ...(storage ? [heading('Storage and documents'), storage] : []),
    ...safetySection(material, region, width),
    ...supplySection(material, region, width),
    ...(material.notes ? [heading('Notes'), paragraph(material.notes)] : []),
    receiptSection(width),
  ]);
}
