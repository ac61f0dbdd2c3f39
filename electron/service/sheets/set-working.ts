import type { BenchLine, BenchState } from '@core/emulsions/bench/bench-state';
import type { MaterialLine } from '@core/emulsions/bench/lines';
import { readBench } from '@core/emulsions/bench/reading';
import { axisData, triangleData } from '@core/plots/bench-plots';
import { hlbAxisHeight, hlbAxisOption, hlbAxisWords } from '@core/plots/hlb-axis';
import { printInk } from '@core/plots/plot-ink';
import { TRIANGLE_HEIGHT, triangleOption, triangleWords } from '@core/plots/triangle';
import type { Material } from '@core/materials/material';
import type { Settings } from '@core/settings/settings';
import type { SheetDefinition } from '@core/sheets/kit/definition';
import { contentWidth } from '@core/sheets/kit/page';
import { workingSheet } from '@core/sheets/working-sheet';
import { drawPlot } from './draw-plot';

/** The bench's hand-out, worked out anew from the materials that its state names. */
export function setWorking(
  state: BenchState,
  materials: Readonly<Record<string, Material>>,
  settings: Settings,
  printedAt: string,
): SheetDefinition {
  const lines = (list: readonly BenchLine[]): MaterialLine[] =>
    list.flatMap(({ materialId, percent }) => {
      const material = materials[materialId];
      return material ? [{ material, percent }] : [];
    });
  const { title, emulsionType, targetHlb } = state;
  const [oils, emulsifiers, rest] = [lines(state.oils), lines(state.emulsifiers), lines(state.rest)];
  const reading = readBench({ emulsionType, oils, emulsifiers, rest, targetHlb });
  const width = contentWidth(settings.paperSize);
  const axis = axisData(emulsifiers, reading, []);
  const triangle = triangleData(emulsifiers, reading);
  const parts = {
    ...{ title, emulsionType, oils, emulsifiers, reading },
    axis:
      axis.marks.length > 0 || axis.band
        ? drawPlot({
            option: hlbAxisOption(axis, printInk(settings.languageRegion)),
            width,
            height: hlbAxisHeight(axis),
            alt: hlbAxisWords(axis, settings.languageRegion),
          })
        : null,
    triangle: triangle
      ? drawPlot({
          option: triangleOption(triangle, printInk(settings.languageRegion)),
          width,
          height: TRIANGLE_HEIGHT,
          alt: triangleWords(triangle, settings.languageRegion),
        })
      : null,
  };
  return workingSheet(parts, settings, printedAt);
}
