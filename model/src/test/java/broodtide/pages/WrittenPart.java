package broodtide.pages;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A part of a committed page that code writes. It stands between the lines {@code <!-- written:
 * name -->} and {@code <!-- end: name -->}.
 *
 * @param page the page, from the folder of the module whose test holds it
 * @param name the part
 */
public record WrittenPart(Path page, String name) {
  /** What rewrites every such part of every page. */
  public static final String COMMAND = "mvn -B test -Dgroups=pages -Dpages=write";

  /** Whether this run rewrites parts instead of comparing them. */
  public static boolean writing() {
    return "write".equals(System.getProperty("pages"));
  }

  /**
   * Fails unless the page's part says what the code says; rewrites it where the run is for that.
   *
   * @param text what should stand there
   * @throws AssertionError when the page has no such part or is out of date
   */
  public void holds(String text) {
    try {
      String now = Files.readString(page);
      String first = "<!-- written: " + name + " -->\n";
      String last = "<!-- end: " + name + " -->";
      int from = now.indexOf(first);
      int to = now.indexOf(last);
      if (from < 0 || to < from) {
        throw new AssertionError(page + " has no part between " + first.strip() + " and " + last);
      }
      String wanted = "\n" + text.strip() + "\n\n";
      if (writing()) {
        String next = now.substring(0, from + first.length()) + wanted + now.substring(to);
        Files.writeString(page, next);
      } else if (!now.substring(from + first.length(), to).equals(wanted)) {
        throw new AssertionError(outOfDate(now.substring(from + first.length(), to), wanted));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String outOfDate(String now, String wanted) {
    String[] stands = now.split("\n");
    String[] should = wanted.split("\n");
    int line = 0;
    while (line < Math.min(stands.length, should.length) && stands[line].equals(should[line])) {
      line++;
    }
    return String.format(
        "%s: the part \"%s\" is out of date.%n  it says:    %s%n  the code says: %s%nTo rewrite it:"
            + " %s",
        page, name, at(stands, line), at(should, line), COMMAND);
  }

  private static String at(String[] lines, int line) {
    return line < lines.length ? lines[line] : "(nothing)";
  }
}
