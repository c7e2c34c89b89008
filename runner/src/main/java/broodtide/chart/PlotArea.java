package broodtide.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.knowm.xchart.HeatMapChart;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.AxesChartStyler;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * The data marks of one field, drawn by XChart. It draws them alone: words, ticks and labels stand
 * around the field in coordinates of the picture, which {@link Scale} gives in the same way.
 *
 * @param box where the field stands
 * @param x its foot
 * @param y its upright axis
 */
record PlotArea(Box box, Scale x, Scale y) {
  /** XChart keeps whole lengths, so it draws on a square of this side, which is then stretched. */
  private static final int SIDE = 1000;

  /** Nothing is drawn in this colour. */
  static final Color NONE = new Color(0, 0, 0, 0);

  /** A colour that carries the mark which is drawn in it through XChart. */
  static final class Ink extends Color {
    private static final long serialVersionUID = 1;

    @SuppressWarnings("serial") // never written anywhere
    private final Mark mark;

    Ink(Mark mark) {
      super(mark.pen.colour().rgb());
      this.mark = mark;
    }

    Mark mark() {
      return mark;
    }

    // A mark is itself alone, and so is its ink.
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(mark);
    }
  }

  /** A dot or diamond; the surface knows its shape and size from the ink. */
  private static final class Dot extends Marker {
    @Override
    public void paint(Graphics2D g, double x, double y, int size) {
      g.fill(new Ellipse2D.Double(x - 1, y - 1, 2, 2));
    }
  }

  /** A place of a heat map. */
  interface Cells {
    void paint(Canvas canvas, int column, int row, Colour colour);
  }

  /** Draws marks in their order, each cut at the edge of the field unless it may reach over it. */
  void paint(Canvas canvas, List<Mark> marks) {
    if (marks.isEmpty()) {
      return;
    }
    XYChart chart = new XYChart(SIDE, SIDE);
    bare(chart.getStyler());
    chart.getStyler().setXAxisLogarithmic(x.log());
    chart.getStyler().setYAxisLogarithmic(y.log());
    chart.getStyler().setXAxisMin(x.low()).setXAxisMax(x.high());
    chart.getStyler().setYAxisMin(y.low()).setYAxisMax(y.high());
    for (int i = 0; i < marks.size(); i++) {
      Mark mark = marks.get(i);
      XYSeries series = chart.addSeries("mark " + i, shown(mark.x, x), shown(mark.y, y));
      Ink ink = new Ink(mark);
      series.setLineColor(ink).setLineStyle(SeriesLines.SOLID);
      series.setMarker(SeriesMarkers.NONE).setMarkerColor(ink);
      series.setFillColor(ink);
      switch (mark.kind) {
        case LINE -> series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Line);
        case STEPS -> series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Step);
        case AREA -> {
          series.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea);
          series.setLineStyle(SeriesLines.NONE);
        }
        case DOTS, DIAMONDS -> {
          series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
          series.setMarker(new Dot());
        }
      }
    }
    CanvasGraphics surface = new CanvasGraphics(canvas, box, SIDE);
    chart.paint(surface, SIDE, SIDE);
    surface.finish();
  }

  /**
   * Draws a table of values as coloured cells; what a cell looks like is up to the taker, its
   * colour to XChart.
   *
   * @param values row by row from above; not a number for an empty place
   * @param low value of the lightest colour
   * @param high value of the darkest
   */
  static void cells(Canvas canvas, double[][] values, double low, double high, Cells taker) {
    int columns = values[0].length;
    List<Integer> xs = new ArrayList<>();
    List<Integer> ys = new ArrayList<>();
    List<Number[]> heat = new ArrayList<>();
    for (int r = 0; r < values.length; r++) {
      ys.add(r);
      for (int c = 0; c < columns; c++) {
        if (r == 0) {
          xs.add(c);
        }
        if (!Double.isNaN(values[r][c])) {
          heat.add(new Number[] {c, values.length - 1 - r, values[r][c]});
        }
      }
    }
    if (heat.isEmpty()) {
      return;
    }
    HeatMapChart chart = new HeatMapChart(SIDE, SIDE);
    bare(chart.getStyler());
    chart.getStyler().setRangeColors(Palette.range()).setShowValue(false);
    chart.getStyler().setMin(low).setMax(high);
    chart.addSeries("cells", xs, ys, heat);
    chart.paint(
        new CellGraphics(
            columns,
            values.length,
            SIDE,
            (column, row, colour) -> taker.paint(canvas, column, row, colour)),
        SIDE,
        SIDE);
  }

  /** Leaves nothing of a chart but its data. */
  private static void bare(AxesChartStyler styler) {
    styler.setChartTitleVisible(false).setLegendVisible(false).setChartPadding(0);
    styler.setChartBackgroundColor(NONE).setPlotBackgroundColor(NONE);
    styler.setPlotBorderVisible(false).setPlotContentSize(1);
    styler.setAxisTitlesVisible(false).setAxisTicksVisible(false).setPlotMargin(0);
    styler.setPlotGridLinesVisible(false).setPlotTicksMarksVisible(false);
    // With empty tick labels no font is ever asked for.
    styler.setXAxisTickLabelsFormattingFunction(v -> "");
    styler.setYAxisTickLabelsFormattingFunction(v -> "");
  }

  /** On a logarithmic axis what lies below its bottom is drawn at the bottom. */
  private static double[] shown(double[] values, Scale scale) {
    return scale.log()
        ? Arrays.stream(values).map(v -> v < scale.low() ? scale.low() : v).toArray()
        : values;
  }
}
