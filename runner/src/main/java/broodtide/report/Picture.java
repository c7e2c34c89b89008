package broodtide.report;

/** Something that can be drawn. The same input gives the same SVG, byte for byte. */
public sealed interface Picture permits SeasonChart, ColonyChart, WindowMap {
  /** Title and subtitle. */
  Heading heading();

  /** Its size in CSS pixels. */
  Size size();

  /** The same picture at another size. */
  Picture sized(Size size);

  /** A sentence or two for readers who cannot see the picture. */
  String description();

  /** Paints the picture; the one painting code behind both kinds of file. */
  void paint(Canvas canvas);

  /**
   * The picture as an SVG document, UTF-8, without an XML heading, so that it can stand inside an
   * HTML page as it is. Needs no fonts.
   */
  default String svg() {
    SvgCanvas canvas = new SvgCanvas(size(), heading().title(), description());
    canvas.fill(Trace.around(new Box(0, 0, size().width(), size().height())), Palette.PAPER, 1);
    paint(canvas);
    return canvas.finish();
  }

  /**
   * The picture as a PNG file with two dots per CSS pixel.
   *
   * @throws FontsMissing when this machine has no fonts to draw with
   */
  default byte[] png() {
    PixelCanvas canvas = PixelCanvas.blank(size(), 2);
    paint(canvas);
    return canvas.finish();
  }
}
