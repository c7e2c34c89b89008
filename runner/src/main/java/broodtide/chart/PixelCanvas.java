package broodtide.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.GlyphVector;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Draws on a bitmap. */
final class PixelCanvas implements Canvas {
  private final BufferedImage image;
  private final Graphics2D g;

  /** What was cut before each open group; empty for no cut. */
  private final Deque<Optional<Shape>> cuts = new ArrayDeque<>();

  private PixelCanvas(BufferedImage image, Graphics2D g) {
    this.image = image;
    this.g = g;
  }

  /**
   * A white canvas.
   *
   * @param dots dots per picture unit, each way
   */
  static PixelCanvas blank(Size size, int dots) {
    Fonts.ready();
    BufferedImage image =
        new BufferedImage(size.width() * dots, size.height() * dots, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.scale(dots, dots);
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    // Without this, slanting lines are moved to whole dots and wobble.
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setColor(Color.WHITE);
    g.fill(new Rectangle2D.Double(0, 0, size.width(), size.height()));
    return new PixelCanvas(image, g);
  }

  /** The bitmap as a PNG file; nothing may be painted afterwards. */
  byte[] finish() {
    g.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      writer.write(image);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  BufferedImage image() {
    return image;
  }

  @Override
  public void open(String kind, String note) {
    cuts.push(Optional.ofNullable(g.getClip()));
  }

  @Override
  public void openInside(Box b) {
    cuts.push(Optional.ofNullable(g.getClip()));
    g.clip(new Rectangle2D.Double(b.x(), b.y(), b.width(), b.height()));
  }

  @Override
  public void close() {
    g.setClip(cuts.pop().orElse(null));
  }

  @Override
  public void fill(Trace edge, Colour colour, double opacity) {
    g.setColor(
        new Color(
            colour.channel(0), colour.channel(1), colour.channel(2), (int) (opacity * 255 + 0.5)));
    g.fill(shape(edge));
  }

  @Override
  public void draw(List<Trace> along, Pen pen) {
    use(pen);
    along.forEach(trace -> g.draw(shape(trace)));
  }

  @Override
  public void disc(double x, double y, double radius, Colour fill, Pen rim) {
    Ellipse2D disc = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
    g.setColor(new Color(fill.rgb()));
    g.fill(disc);
    use(rim);
    g.draw(disc);
  }

  @Override
  public void write(String text, double x, double y, Type type) {
    Font font = Fonts.sans(type.size(), type.bold());
    GlyphVector letters = font.createGlyphVector(g.getFontRenderContext(), text);
    double width = letters.getLogicalBounds().getWidth();
    double left =
        switch (type.anchor()) {
          case START -> x;
          case MIDDLE -> x - width / 2;
          case END -> x - width;
        };
    if (type.halo()) {
      g.setColor(new Color(Palette.PAPER.rgb()));
      g.setStroke(new BasicStroke(3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      g.draw(letters.getOutline((float) left, (float) y));
    }
    g.setColor(new Color(type.colour().rgb()));
    g.drawGlyphVector(letters, (float) left, (float) y);
  }

  private void use(Pen pen) {
    g.setColor(new Color(pen.colour().rgb()));
    float width = (float) pen.width();
    if (pen.dash().isEmpty()) {
      g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      return;
    }
    String[] parts = pen.dash().split(" ", -1);
    float[] dash = new float[parts.length];
    for (int i = 0; i < dash.length; i++) {
      dash[i] = Float.parseFloat(parts[i]);
    }
    g.setStroke(new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0));
  }

  private static Path2D shape(Trace t) {
    Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO, t.size());
    path.moveTo(t.x(0), t.y(0));
    for (int i = 1; i < t.size(); i++) {
      path.lineTo(t.x(i), t.y(i));
    }
    if (t.closed()) {
      path.closePath();
    }
    return path;
  }
}
