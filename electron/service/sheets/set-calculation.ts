import { calculate } from '@core/calculators/calculation';
import type { CalculationRequest } from '@core/calculators/calculation-request';
import { calculateHld, type HldCalculated } from '@core/calculators/hld';
import type { Region } from '@core/locale/numbers';
import type { Material } from '@core/materials/material';
import { HLD_LINE_HEIGHT, hldLineData, hldLineOption, hldLineWords } from '@core/plots/hld-line';
import { printInk } from '@core/plots/plot-ink';
import type { Settings } from '@core/settings/settings';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { contentWidth } from '@core/sheets/kit/page';
import type { DrawnPlot } from '@core/sheets/working-sheet';
import { drawPlot } from './draw-plot';

/** A calculation's hand-out, computed anew from its inputs and the library; HLD brings its plot along. */
export function setCalculation(
  request: CalculationRequest,
  materials: Readonly<Record<string, Material>>,
  settings: Settings,
  printedAt: string,
): SheetDefinition {
  const library = new Map(Object.entries(materials));
  if (request.of !== 'hld') return calculationSheet(calculate(request, library), settings, printedAt);
  const answer = calculateHld(request, library);
  return calculationSheet(
    answer,
    settings,
    printedAt,
    hldPlot(answer, contentWidth(settings.paperSize), settings.languageRegion),
  );
}

function hldPlot(answer: HldCalculated, width: number, region: Region): DrawnPlot {
  const data = hldLineData(answer);
  return drawPlot({
    option: hldLineOption(data, printInk(region)),
    width,
    height: HLD_LINE_HEIGHT,
    alt: hldLineWords(data, region),
  });
}
