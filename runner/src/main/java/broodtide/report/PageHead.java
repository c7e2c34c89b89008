package broodtide.report;

import broodtide.words.Digits;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** What every page begins with, and the lines at its foot that say how it was made. */
final class PageHead {
  private static final String STYLE = "/page/page.css";

  private PageHead() {}

  /** The head, with a policy that lets nothing run or load. */
  static void write(HtmlWriter h, String title) {
    h.open("head").open("meta", "charset", "utf-8");
    h.open("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    h.open(
        "meta",
        "http-equiv",
        "Content-Security-Policy",
        "content",
        "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'");
    h.open("meta", "name", "color-scheme", "content", "light");
    h.element("title", title);
    h.style(css());
    h.close();
  }

  /** Opens the footer; the caller closes it. */
  static void made(HtmlWriter h, RunFacts facts) {
    h.open("footer").element("h2", "How this page was made");
    String drawn =
        facts.members() == 0
            ? ""
            : ", seed "
                + facts.seed()
                + ", "
                + Digits.count(facts.members())
                + " simulated colonies";
    String same = facts.members() == 0 ? "input" : "input, seed";
    h.element(
        "p",
        "broodtide "
            + facts.version()
            + drawn
            + ". The same "
            + same
            + " and version give the same page.");
    h.open("p").element("code", facts.line()).close();
  }

  private static String css() {
    try (InputStream in = PageHead.class.getResourceAsStream(STYLE)) {
      return new String(Objects.requireNonNull(in, STYLE).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
