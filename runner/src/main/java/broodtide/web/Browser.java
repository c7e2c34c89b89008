package broodtide.web;

import java.io.IOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The browser of this machine, asked by the command that its system has for that. */
public final class Browser {
  private final List<String> command;

  private Browser(List<String> command) {
    this.command = command;
  }

  /** The browser of the system that the program runs on. */
  public static Browser here() {
    return of(System.getProperty("os.name", ""));
  }

  /**
   * The browser of a system.
   *
   * @param system its name, as Java says it
   */
  static Browser of(String system) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return new Browser(List.of("rundll32", "url.dll,FileProtocolHandler"));
    }
    return new Browser(List.of(name.startsWith("mac") ? "open" : "xdg-open"));
  }

  /** The words of the command, without the address. */
  List<String> command() {
    return command;
  }

  /**
   * Asks for a page and does not wait for it.
   *
   * @param page the address of the page
   * @return whether there was somebody to ask; whether a browser came up, nobody says
   */
  public boolean show(URI page) {
    ProcessBuilder builder = new ProcessBuilder(new ArrayList<>(command));
    builder.command().add(page.toString());
    builder.redirectOutput(ProcessBuilder.Redirect.DISCARD);
    builder.redirectError(ProcessBuilder.Redirect.DISCARD);
    try {
      builder.start();
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
