package broodtide.report;

import java.util.List;
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
  /** Copies the lists. */
  public Page {
    parts = List.copyOf(parts);
    notes = List.copyOf(notes);
  }

  /** {@return the document, UTF-8} The same input gives the same text. */
  public String html() {
    HtmlWriter h = HtmlWriter.document("en");
    PageHead.write(h, title() + ": " + names());
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

  private String title() {
    return facts.command().equals("forecast") ? "Varroa forecast" : "Varroa plans compared";
  }

  private String names() {
    return parts.stream().map(p -> p.colony().colony()).collect(Collectors.joining(", "));
  }

  private void opening(HtmlWriter h) {
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
        "These are estimates from a model, not instructions. Each range is a 90 % interval: nine of"
            + " ten simulated colonies fall inside it.",
        "class",
        "fine");
    h.close();
  }

  private void closing(HtmlWriter h) {
    PageHead.made(h, facts);
    h.element(
        "p",
        "Beside this page lie results.json with every figure, plans.csv with the table of plans and"
            + " season.csv with the days.");
    h.close();
  }
}
