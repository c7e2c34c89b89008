package broodtide.terminal;

import broodtide.forms.HiddenCharacters;
import java.io.Console;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Sets text for a terminal, or for a file or pipe that stands in for one. Returns text; printing is
 * the caller's.
 *
 * @param width columns, 40 to 100
 * @param colour whether bold and dim may be used
 * @param unicode whether letters outside ASCII can be shown
 */
public record Terminal(int width, boolean colour, boolean unicode) {
  private static final int LEAST = 40;
  private static final int MOST = 100;
  private static final int USUAL = 80;

  public Terminal {
    if (width < LEAST || width > MOST) {
      throw new IllegalArgumentException(
          "terminal width is " + width + "; expected " + LEAST + " to " + MOST);
    }
  }

  /**
   * Judges a terminal.
   *
   * @param environment reads {@code NO_COLOR} (any text in it turns colour off), {@code TERM} and
   *     {@code COLUMNS}
   * @param isTerminal whether standard output is a terminal; if not there is no colour
   * @param charset of standard output
   * @return how to set text on it
   */
  public static Terminal of(Map<String, String> environment, boolean isTerminal, Charset charset) {
    boolean refused = !environment.getOrDefault("NO_COLOR", "").isEmpty();
    boolean dumb = environment.getOrDefault("TERM", "").equals("dumb");
    boolean unicode = charset.newEncoder().canEncode('\u2588');
    String columns = environment.getOrDefault("COLUMNS", "").strip();
    int width = columns.matches("[0-9]{1,5}") ? Integer.parseInt(columns) : USUAL;
    return new Terminal(
        Math.max(LEAST, Math.min(MOST, width)), isTerminal && !refused && !dumb, unicode);
  }

  /**
   * {@return the terminal this program runs in} A launcher that knows better may set the system
   * property {@code broodtide.terminal} to {@code true} or {@code false}.
   */
  public static Terminal here() {
    String told = System.getProperty("broodtide.terminal", "");
    boolean isTerminal = told.isEmpty() ? console() : Boolean.parseBoolean(told);
    return of(System.getenv(), isTerminal, charset());
  }

  /** Before JDK 22 there is a console only at a terminal; from then on it has to be asked. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean console() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException before22) {
      return true;
    }
  }

  private static Charset charset() {
    for (String property : List.of("stdout.encoding", "sun.stdout.encoding")) {
      String name = System.getProperty(property, "");
      if (!name.isEmpty() && Charset.isSupported(name)) {
        return Charset.forName(name);
      }
    }
    return Charset.defaultCharset();
  }

  /**
   * {@return one line, bold where colour is allowed}
   *
   * @param text the text, without colours of its own
   */
  public String strong(String text) {
    return colour ? "\u001b[1m" + clean(text) + "\u001b[0m" : clean(text);
  }

  /**
   * {@return dim where colour is allowed}
   *
   * @param text the text, without colours of its own
   */
  public String faint(String text) {
    return colour ? "\u001b[2m" + text + "\u001b[0m" : text;
  }

  /**
   * {@return sentences broken at blanks to the width, paragraphs kept; no line break at the end}
   *
   * @param text the text, without colours of its own
   */
  public String wrap(String text) {
    return wrap(text, 0);
  }

  /**
   * {@return the same with every line but the first of each paragraph moved in by this many blanks}
   *
   * @param text the text, without colours of its own
   * @param indent blanks before every line but the first, 0 or more
   */
  public String wrap(String text, int indent) {
    List<String> out = new ArrayList<>();
    for (String paragraph : text.split("\n", -1)) {
      String between = "\n" + " ".repeat(indent);
      out.add(String.join(between, broken(clean(paragraph), width - indent)));
    }
    return String.join("\n", out);
  }

  /**
   * Sets a table.
   *
   * @param table the table
   * @return the table as lines
   */
  public String table(Table table) {
    return new TableSetter(this, table).set();
  }

  /**
   * {@return whether a table stands in its columns and need not become a list}
   *
   * @param table the table
   */
  public boolean fits(Table table) {
    return new TableSetter(this, table).fits();
  }

  /**
   * {@return one line as {@link #clean} makes it, cut with three dots where it is longer}
   *
   * @param text what was read
   * @param most letters to keep, dots included; more than 3
   */
  public static String cut(String text, int most) {
    String line = clean(text);
    return length(line) <= most
        ? line
        : line.substring(0, line.offsetByCodePoints(0, most - 3)).stripTrailing() + "...";
  }

  /** Breaks one paragraph at blanks; a word longer than the width is cut. */
  static List<String> broken(String text, int width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.strip().split(" +", -1)) {
      String rest = word;
      if (!line.isEmpty() && length(line) + 1 + length(rest) > width) {
        lines.add(line);
        line = "";
      }
      while (length(rest) > width) {
        int cut = rest.offsetByCodePoints(0, width);
        lines.add(rest.substring(0, cut));
        rest = rest.substring(cut);
      }
      line = line.isEmpty() ? rest : line + " " + rest;
    }
    lines.add(line);
    return lines;
  }

  static int length(String text) {
    return text.codePointCount(0, text.length());
  }

  /**
   * {@return one line with blanks for hidden characters, which whatever was read may hold and which
   * could command the terminal or turn what it shows}
   *
   * @param text what was read
   */
  public static String clean(String text) {
    return HiddenCharacters.blanked(text);
  }
}
