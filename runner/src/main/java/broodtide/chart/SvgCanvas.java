package broodtide.chart;

import java.util.List;

/**
 * Writes SVG: real text that can be searched and read aloud, anchored so that it stands right in
 * any face, and lengths to a tenth of a unit. The same calls give the same bytes.
 */
final class SvgCanvas implements Canvas {
  private static final String FACES =
      "system-ui,-apple-system,'Segoe UI',Roboto,'DejaVu Sans',Helvetica,Arial,sans-serif";

  private final StringBuilder out = new StringBuilder(32_768);
  private final StringBuilder open = new StringBuilder();

  SvgCanvas(Size size, String title, String description) {
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ");
    out.append(size.width()).append(' ').append(size.height()).append("\" role=\"img\" ");
    out.append("font-family=\"").append(FACES).append("\" font-size=\"").append(num(Type.SMALL));
    out.append("\">\n<title>");
    out.append(Markup.escape(title)).append("</title>\n<desc>").append(Markup.escape(description));
    out.append("</desc>\n");
  }

  /** The whole document; nothing may be painted afterwards. */
  String finish() {
    return out.append("</svg>\n").toString();
  }

  @Override
  public void open(String kind, String note) {
    out.append("<g class=\"").append(kind).append("\">");
    if (!note.isEmpty()) {
      out.append("<title>").append(Markup.escape(note)).append("</title>");
    }
    out.append('\n');
    open.append('g');
  }

  @Override
  public void openInside(Box b) {
    // A nested picture cuts at its edge without needing an identifier, unlike a clip path; so
    // several charts can stand in one page.
    String box = num(b.x()) + " " + num(b.y()) + " " + num(b.width()) + " " + num(b.height());
    out.append("<svg x=\"").append(num(b.x())).append("\" y=\"").append(num(b.y()));
    out.append("\" width=\"").append(num(b.width())).append("\" height=\"");
    out.append(num(b.height())).append("\" viewBox=\"").append(box).append("\">\n");
    open.append('s');
  }

  @Override
  public void close() {
    int last = open.length() - 1;
    out.append(open.charAt(last) == 'g' ? "</g>\n" : "</svg>\n");
    open.setLength(last);
  }

  @Override
  public void fill(Trace edge, Colour colour, double opacity) {
    out.append("<path fill=\"").append(colour.css()).append('"');
    if (opacity < 1) {
      out.append(" fill-opacity=\"").append(hundredths(opacity)).append('"');
    }
    out.append(" d=\"");
    path(edge);
    out.append("\"/>\n");
  }

  @Override
  public void draw(List<Trace> along, Pen pen) {
    out.append("<path fill=\"none\"");
    stroke(pen);
    out.append(" stroke-linejoin=\"round\" stroke-linecap=\"").append(cap(pen)).append('"');
    out.append(" d=\"");
    along.forEach(trace -> path(trace.thinned(Trace.FINENESS)));
    out.append("\"/>\n");
  }

  @Override
  public void disc(double x, double y, double radius, Colour fill, Pen rim) {
    out.append("<circle cx=\"").append(num(x)).append("\" cy=\"").append(num(y));
    out.append("\" r=\"").append(num(radius)).append("\" fill=\"").append(fill.css()).append('"');
    stroke(rim);
    out.append("/>\n");
  }

  @Override
  public void write(String text, double x, double y, Type type) {
    out.append("<text x=\"").append(num(x)).append("\" y=\"").append(num(y));
    out.append('"');
    if (type.size() != Type.SMALL) {
      out.append(" font-size=\"").append(num(type.size())).append('"');
    }
    if (type.bold()) {
      out.append(" font-weight=\"600\"");
    }
    switch (type.anchor()) {
      case START -> {}
      case MIDDLE -> out.append(" text-anchor=\"middle\"");
      case END -> out.append(" text-anchor=\"end\"");
    }
    if (type.halo()) {
      out.append(" paint-order=\"stroke\" stroke=\"").append(Palette.PAPER.css());
      out.append("\" stroke-width=\"3\" stroke-linejoin=\"round\"");
    }
    out.append(" fill=\"").append(type.colour().css()).append("\">");
    out.append(Markup.escape(text)).append("</text>\n");
  }

  private void stroke(Pen pen) {
    out.append(" stroke=\"").append(pen.colour().css()).append("\" stroke-width=\"");
    out.append(num(pen.width())).append('"');
    if (!pen.dash().isEmpty()) {
      out.append(" stroke-dasharray=\"").append(pen.dash()).append('"');
    }
  }

  /** Round ends would close the gaps of a dash. */
  private static String cap(Pen pen) {
    return pen.dash().isEmpty() ? "round" : "butt";
  }

  /** Steps from point to point in tenths, each from the rounded place before, so none add up. */
  private void path(Trace t) {
    out.append('M').append(num(t.x(0))).append(' ').append(num(t.y(0)));
    long x = Math.round(t.x(0) * 10);
    long y = Math.round(t.y(0) * 10);
    boolean first = true;
    int last = t.closed() ? t.size() - 1 : t.size();
    for (int i = 1; i < last; i++) {
      long nx = Math.round(t.x(i) * 10);
      long ny = Math.round(t.y(i) * 10);
      if (nx != x || ny != y) {
        String dy = tenths(ny - y);
        out.append(first ? "l" : " ").append(tenths(nx - x));
        out.append(dy.startsWith("-") ? "" : " ").append(dy);
        first = false;
        x = nx;
        y = ny;
      }
    }
    out.append(t.closed() ? "z" : "");
  }

  private static String num(double v) {
    return tenths(Math.round(v * 10));
  }

  private static String tenths(long v) {
    long whole = Math.abs(v) / 10;
    long rest = Math.abs(v) % 10;
    String s = rest == 0 ? Long.toString(whole) : (whole == 0 ? "" : whole) + "." + rest;
    return v < 0 ? "-" + s : s;
  }

  private static String hundredths(double v) {
    long n = Math.round(v * 100);
    return n >= 100 ? "1" : n % 10 == 0 ? "." + n / 10 : n < 10 ? ".0" + n : "." + n;
  }
}
