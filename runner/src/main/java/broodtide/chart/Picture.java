package broodtide.chart;

/** Something that can be drawn. The same input gives the same SVG, byte for byte. */
public sealed interface Picture permits SeasonChart, ColonyChart, WindowMap, Figure {
  /** Stands in every picture, for pictures travel without the text around them. */
  String CAUTION = "Estimate, not an instruction; the label decides.";

  /** {@return title and subtitle} */
  Heading heading();

  /** {@return the size asked for, in CSS pixels} */
  Size size();

  /** {@return the size it is drawn at: made higher where what it shows needs more room} */
  Size drawn();

  /**
   * {@return the same picture at another size}
   *
   * @param size width and height in user units
   */
  Picture sized(Size size);

  /** {@return a sentence or two for readers who cannot see the picture} */
  String description();

  /**
   * Paints the picture; the one painting code behind both kinds of file.
   *
   * @param canvas where it is painted, of the size of the picture
   */
  void paint(Canvas canvas);

  /**
   * {@return the picture as an SVG document, UTF-8, without an XML heading, so that it can stand
   * inside an HTML page as it is} Needs no fonts.
   */
  default String svg() {
    Size size = drawn();
    SvgCanvas canvas = new SvgCanvas(size, heading().title(), description());
    canvas.fill(Trace.around(new Box(0, 0, size.width(), size.height())), Palette.PAPER, 1);
    paint(canvas);
    return canvas.finish();
  }

  /**
   * {@return the picture as a PNG file with two dots per CSS pixel}
   *
   * @throws FontsMissing when this machine has no fonts to draw with
   */
  default byte[] png() {
    PixelCanvas canvas = PixelCanvas.blank(drawn(), 2);
    paint(canvas);
    return canvas.finish();
  }
}
