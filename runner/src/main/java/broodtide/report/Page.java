package broodtide.report;

import broodtide.words.Digits;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The report as one HTML page that needs nothing else: pictures and style stand inside it, there is
 * no script, and a content security policy forbids the browser to run or load any.
 *
 * @param parts the colonies
 * @param notes what was assumed or passed over, in sentences
 * @param facts how it was made
 */
public record Page(List<PagePart> parts, List<String> notes, RunFacts facts) {
  private static final String STYLE = "/page/page.css";

  /** Copies the lists. */
  public Page {
    parts = List.copyOf(parts);
    notes = List.copyOf(notes);
  }

  /** {@return the document, UTF-8} The same input gives the same text. */
  public String html() {
    Html h = Html.document("en");
    head(h);
    h.open("body");
    opening(h);
    h.open("main");
    parts.forEach(part -> h.append(part.section()));
    new AssumedSection(parts, notes).write(h);
    AnswerDrivers.write(h, parts);
    Cautions.write(h, parts);
    h.close();
    closing(h);
    return h.finish();
  }

  private void head(Html h) {
    h.open("head").open("meta", "charset", "utf-8");
    h.open("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    h.open(
        "meta",
        "http-equiv",
        "Content-Security-Policy",
        "content",
        "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'");
    h.open("meta", "name", "color-scheme", "content", "light");
    h.element("title", title() + ": " + names());
    h.style(css());
    h.close();
  }

  private String title() {
    return facts.command().equals("forecast") ? "Varroa forecast" : "Varroa plans compared";
  }

  private String names() {
    return parts.stream().map(p -> p.colony().colony()).collect(Collectors.joining(", "));
  }

  private void opening(Html h) {
    h.open("header").element("h1", title());
    for (PagePart part : parts) {
      h.open("div", "class", "answer").open("p", "class", "whose");
      h.open("a", "href", "#" + part.id()).text("Colony ").given(part.colony().colony());
      h.close().close();
      h.element("p", part.sentence(), "class", "lead");
      h.element("p", String.join(" ", part.further()));
      part.contradiction().ifPresent(s -> h.element("p", s, "class", "warning"));
      h.close();
    }
    h.element(
        "p",
        "These are estimates from a model, not instructions. Each range is meant to hold in nine"
            + " seasons of ten like yours; one in ten falls outside.",
        "class",
        "fine");
    h.close();
  }

  private void closing(Html h) {
    h.open("footer").element("h2", "How this page was made");
    h.element(
        "p",
        "broodtide "
            + facts.version()
            + ", seed "
            + facts.seed()
            + ", "
            + Digits.count(facts.members())
            + " simulated colonies. The same input, seed and version give the same page.");
    h.open("p").element("code", facts.line()).close();
    h.element(
        "p",
        "Beside this page lie results.json with every figure, plans.csv with the table of plans and"
            + " season.csv with the days.");
    h.close();
  }

  private static String css() {
    try (InputStream in = Page.class.getResourceAsStream(STYLE)) {
      return new String(Objects.requireNonNull(in, STYLE).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
