package broodtide.forms;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Characters that leave no mark of their own: controls such as NUL and the start of a terminal's
 * escape sequence, line and paragraph separators, marks that turn the direction of writing,
 * characters without width, and letters that are blank. They let two names look the same, or one
 * text look like another, and some of them command a terminal.
 */
public final class HiddenCharacters {
  /** Blank letters and marks that Unicode does not count among controls and formats. */
  private static final Set<Integer> BLANK_LETTERS =
      Set.of(
          0x034F, 0x115F, 0x1160, 0x17B4, 0x17B5, 0x180B, 0x180C, 0x180D, 0x2800, 0x3164, 0xFFA0);

  private static final int NON_JOINER = 0x200C;
  private static final int JOINER = 0x200D;

  private HiddenCharacters() {}

  private static boolean hidden(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE ->
          true;
      default -> BLANK_LETTERS.contains(character);
    };
  }

  /** The first hidden character of a name, as a message says it; empty when there is none. */
  static Optional<String> first(String name) {
    OptionalInt found = name.codePoints().filter(HiddenCharacters::hidden).findFirst();
    return found.isPresent() ? Optional.of(told(found.getAsInt())) : Optional.empty();
  }

  /** A character by number and name, {@code U+202E (RIGHT-TO-LEFT OVERRIDE)}. */
  public static String told(int character) {
    String name = Character.getName(character);
    return String.format(Locale.ROOT, "U+%04X", character)
        + (name == null ? "" : " (" + name + ")");
  }

  /**
   * {@return the text with a blank for each hidden character, to be shown in a message}
   *
   * @param text what somebody wrote
   */
  public static String blanked(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().forEach(c -> out.appendCodePoint(hidden(c) ? ' ' : c));
    return out.toString();
  }

  /**
   * A note with U+FFFD for each hidden character but tabs, line breaks, and the joiners that some
   * scripts and pictographs need.
   */
  public static String marked(String note) {
    StringBuilder out = new StringBuilder(note.length());
    note.codePoints().forEach(c -> out.appendCodePoint(hidden(c) && !inNotes(c) ? 0xFFFD : c));
    return out.toString();
  }

  private static boolean inNotes(int c) {
    return c == '\t' || c == '\n' || c == '\r' || c == NON_JOINER || c == JOINER;
  }
}
