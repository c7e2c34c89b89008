package broodtide.web;

import broodtide.forms.HiddenCharacters;
import broodtide.measure.RefusedException;

/** A request that is turned away, with one message for whoever sent it. */
public final class Refused extends RefusedException {
  private static final long serialVersionUID = 1L;

  /** Letters shown of what was sent. */
  private static final int SHOWN = 40;

  private final int status;

  /**
   * @param status HTTP status, 400 to 499
   * @param message what is wrong, what is allowed
   */
  Refused(int status, String message) {
    super(message);
    this.status = status;
  }

  /** A value that is not allowed. */
  public static Refused bad(String message) {
    return new Refused(400, message);
  }

  /** A value that is not allowed: its name, the value, what is expected. */
  public static Refused unwanted(String name, String given, String allowed) {
    return bad(name + " is " + quoted(given) + "; expected " + allowed);
  }

  public static Refused unknown(String message) {
    return new Refused(404, message);
  }

  public int status() {
    return status;
  }

  /** What somebody sent, short and without hidden characters, in quotes. */
  public static String quoted(String sent) {
    boolean whole = sent.codePointCount(0, sent.length()) <= SHOWN;
    String shown = whole ? sent : sent.substring(0, sent.offsetByCodePoints(0, SHOWN)) + "...";
    return '"' + HiddenCharacters.blanked(shown) + '"';
  }
}
