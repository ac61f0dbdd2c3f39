import type { DrawnPlot } from '@core/sheets/working-sheet';
import { CustomChart, LineChart, ScatterChart } from 'echarts/charts';
import { GridComponent, MarkAreaComponent, MarkLineComponent } from 'echarts/components';
import { init, use, type EChartsCoreOption } from 'echarts/core';
import { LabelLayout } from 'echarts/features';
import { SVGRenderer } from 'echarts/renderers';

use([
  CustomChart,
  LineChart,
  ScatterChart,
  GridComponent,
  MarkAreaComponent,
  MarkLineComponent,
  LabelLayout,
  SVGRenderer,
]);

export interface PlotToDraw {
  option: EChartsCoreOption;
  /** Points. */
  width: number;
  height: number;
  alt: string;
}

/** Draws a plot as SVG for a sheet: the same option as on the screen. */
export function drawPlot({ option, width, height, alt }: PlotToDraw): DrawnPlot {
  const chart = init(null, null, { renderer: 'svg', ssr: true, width, height });
  try {
    // A tooltip is for a pointer; paper has none.
    const { tooltip: _tooltip, ...printed } = option;
    chart.setOption(printed);
    return { svg: chart.renderToSVGString(), height, alt };
  } finally {
    chart.dispose();
  }
}
