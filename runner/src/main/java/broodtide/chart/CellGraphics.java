package broodtide.chart;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;

/** What XChart draws a heat map on: cells are handed on by column and row, with their colour. */
final class CellGraphics extends ShapesOnly {
  /** Takes a cell. */
  interface Taker {
    void take(int column, int row, Colour colour);
  }

  private final double width;
  private final double height;
  private final Taker taker;
  private Color colour = PlotArea.NONE;

  CellGraphics(int columns, int rows, int side, Taker taker) {
    this.width = (double) side / columns;
    this.height = (double) side / rows;
    this.taker = taker;
  }

  @Override
  public void setColor(Color next) {
    colour = next;
  }

  @Override
  public void draw(Shape shape) {}

  @Override
  public void fill(Shape shape) {
    if (colour.getAlpha() > 0 && shape instanceof Rectangle2D cell) {
      taker.take(
          (int) (cell.getCenterX() / width),
          (int) (cell.getCenterY() / height),
          new Colour(colour.getRGB() & 0xffffff));
    }
  }
}
