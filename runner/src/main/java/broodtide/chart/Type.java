package broodtide.chart;

/**
 * How a piece of text is set.
 *
 * @param size letter size in picture units
 * @param bold whether the letters are bold
 * @param colour their colour
 * @param anchor which end of the text stands at the given place
 * @param halo whether a paper-coloured rim keeps lines behind the text away from it
 */
record Type(double size, boolean bold, Colour colour, Anchor anchor, boolean halo) {
  /** Which end of the text stands at the given place. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** Smallest letters used in any picture: on a phone the picture is shrunk to about half. */
  static final double SMALL = 13.5;

  static final Type TITLE = new Type(20, true, Palette.INK, Anchor.START, false);
  static final Type SUBTITLE = new Type(14.5, false, Palette.MUTED, Anchor.START, false);
  static final Type LABEL = new Type(SMALL, false, Palette.MUTED, Anchor.START, false);

  Type in(Colour other) {
    return new Type(size, bold, other, anchor, halo);
  }

  Type at(Anchor other) {
    return new Type(size, bold, colour, other, halo);
  }

  Type heavy() {
    return new Type(size, true, colour, anchor, halo);
  }

  Type sized(double other) {
    return new Type(other, bold, colour, anchor, halo);
  }

  Type haloed() {
    return new Type(size, bold, colour, anchor, true);
  }

  /** The room a text takes when its base line starts, ends or is centred at (x, y). */
  Box room(String text, double x, double y) {
    double w = Lettering.width(text, size, bold);
    double left =
        switch (anchor) {
          case START -> x;
          case MIDDLE -> x - w / 2;
          case END -> x - w;
        };
    return new Box(left, y - 0.78 * size, w, size);
  }
}
