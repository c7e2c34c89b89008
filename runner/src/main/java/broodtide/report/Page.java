package broodtide.report;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The report as one HTML page that needs nothing else: pictures and style stand inside it, there is
 * no script, and a content security policy forbids the browser to run or load any.
 *
 * @param parts the colonies
 * @param notes what was assumed or passed over, in sentences
 * @param facts how it was made
 * @param sheet the sheet of the apiary; empty for one hive alone
 * @param plans one plan for the whole apiary, see {@link ApiarySheet#together}
 */
public record Page(
    List<PagePart> parts,
    List<String> notes,
    RunFacts facts,
    Optional<ApiarySheet> sheet,
    List<ApiaryPlan> plans) {
  /** Copies the lists. */
  public Page {
    parts = List.copyOf(parts);
    notes = List.copyOf(notes);
    plans = List.copyOf(plans);
  }

  /** {@return the document, UTF-8} The same input gives the same text. */
  public String html() {
    HtmlWriter h = HtmlWriter.document("en");
    PageHead.write(h, title() + ": " + names());
    h.open("body");
    opening(h);
    h.open("main");
    byUrgency().forEach(part -> h.append(part.section()));
    sheet.ifPresent(s -> toRead(h));
    new AssumedSection(parts, notes).write(h);
    AnswerDrivers.write(h, parts);
    Cautions.write(h, parts);
    PageHead.glossary(h, facts);
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
    h.open("header", "class", sheet.isPresent() ? "apiary" : "colony-answer");
    h.element("h1", title());
    sheet.ifPresent(
        s -> new SheetSection(s, plans, parts.get(0).colony().thresholds(), places()).write(h));
    for (PagePart part : sheet.isPresent() ? List.<PagePart>of() : parts) {
      h.open("div", "class", "answer").open("p", "class", "whose");
      h.open("a", "href", "#" + part.id()).text("Colony ").given(part.colony().colony());
      h.close().close();
      ColonySection.first(h, part.first());
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

  private Map<String, String> places() {
    return parts.stream().collect(Collectors.toMap(p -> p.colony().colony(), PagePart::id));
  }

  /** The parts in the order of the sheet. */
  private List<PagePart> byUrgency() {
    if (sheet.isEmpty()) {
      return parts;
    }
    Map<String, PagePart> byName =
        parts.stream().collect(Collectors.toMap(p -> p.colony().colony(), Function.identity()));
    return sheet.get().rows().stream().map(row -> byName.get(row.hive())).toList();
  }

  /** What the sections of all hives need to be read, said once. */
  private void toRead(HtmlWriter h) {
    h.open("section", "class", "reading").element("h2", "How to read these pages");
    h.element("p", ColonySection.CHART);
    h.element("p", ColonySection.FIGURES);
    h.append(parts.get(0).meanings());
    h.close();
  }

  private void closing(HtmlWriter h) {
    PageHead.made(h, facts);
    h.element(
        "p",
        "Beside this page are results.json with every figure, plans.csv with the table of plans"
            + (sheet.isPresent() ? ", sheet.csv with the sheet" : "")
            + " and season.csv with the days.");
    h.close();
  }
}
