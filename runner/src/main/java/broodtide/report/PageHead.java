package broodtide.report;

import broodtide.words.Digits;
import broodtide.words.Glossary;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
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

  /** The terms that the page has used so far, and uses in its last lines, explained. */
  static void glossary(HtmlWriter h, RunFacts facts) {
    List<Glossary.Entry> used = Glossary.of(h.words() + drawn(facts));
    if (used.isEmpty()) {
      return;
    }
    h.open("section", "class", "glossary").element("h2", "Words");
    h.open("dl", "class", "meanings");
    for (Glossary.Entry entry : used) {
      h.open("div").element("dt", entry.term()).element("dd", entry.meaning()).close();
    }
    h.close().close();
  }

  /** Opens the footer; the caller closes it. */
  static void made(HtmlWriter h, RunFacts facts) {
    h.open("footer").element("h2", "How this page was made");
    String same = facts.members() == 0 ? "input" : "input, seed";
    h.element(
        "p",
        "broodtide "
            + facts.version()
            + drawn(facts)
            + ". The same "
            + same
            + " and version give the same page.");
    h.open("p").element("code", facts.line()).close();
  }

  /**
   * Ends a page after its answers: what is assumed, cautions, words, and how it was made.
   *
   * @param beside what lies beside the page, as a sentence
   */
  static void end(HtmlWriter h, List<String> notes, RunFacts facts, String beside) {
    if (!notes.isEmpty()) {
      h.open("section").element("h2", "What is assumed").open("ul");
      notes.forEach(note -> h.element("li", note));
      h.close().close();
    }
    Cautions.write(h);
    glossary(h, facts);
    h.close();
    made(h, facts);
    h.element("p", beside);
    h.close();
  }

  private static String drawn(RunFacts facts) {
    return facts.members() == 0
        ? ""
        : ", seed " + facts.seed() + ", " + Digits.count(facts.members()) + " simulated colonies";
  }

  private static String css() {
    try (InputStream in = PageHead.class.getResourceAsStream(STYLE)) {
      return new String(Objects.requireNonNull(in, STYLE).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
