package broodtide.web;

import broodtide.measure.RefusedException;

/** A request that is turned away, with one message for whoever sent it. */
public final class Refused extends RefusedException {
  private static final long serialVersionUID = 1L;

  private final int status;

  /**
   * @param status HTTP status, 400 to 499
   * @param message what is wrong, what is allowed
   */
  Refused(int status, String message) {
    super(message);
    this.status = status;
  }

  static Refused bad(String message) {
    return new Refused(400, message);
  }

  public static Refused unknown(String message) {
    return new Refused(404, message);
  }

  public int status() {
    return status;
  }

  /** What somebody sent, short and without control characters, in quotes. */
  public static String quoted(String sent) {
    String clean =
        sent.codePoints()
            .limit(40)
            .collect(
                StringBuilder::new,
                (s, c) -> s.appendCodePoint(Character.isISOControl(c) ? ' ' : c),
                StringBuilder::append)
            .toString();
    return '"' + clean + (sent.codePointCount(0, sent.length()) > 40 ? "..." : "") + '"';
  }
}
