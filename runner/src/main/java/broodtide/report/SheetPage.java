package broodtide.report;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.wash.ThresholdSet;
import java.util.List;
import java.util.Map;

/**
 * The report of more hives than get a section each: the sheet alone, as one HTML page that needs
 * nothing else.
 *
 * @param sheet the apiary
 * @param plans one plan for the whole apiary, see {@link ApiarySheet#together}
 * @param thresholds the set that its hives are held to
 * @param notes what was assumed or passed over, in sentences
 * @param facts how it was made
 */
public record SheetPage(
    ApiarySheet sheet,
    List<ApiaryPlan> plans,
    ThresholdSet thresholds,
    List<String> notes,
    RunFacts facts) {
  /** Copies the lists. */
  public SheetPage {
    plans = List.copyOf(plans);
    notes = List.copyOf(notes);
  }

  /** {@return the document, UTF-8} The same input gives the same text. */
  public String html() {
    HtmlWriter h = HtmlWriter.document("en");
    PageHead.write(h, "The sheet of " + sheet.rows().size() + " hives");
    h.open("body").open("header", "class", "apiary").element("h1", "Varroa plans compared");
    new SheetSection(sheet, plans, thresholds, Map.of()).write(h);
    h.element(
        "p",
        "These are estimates from a model, not instructions. Each range is a 90 % interval: nine of"
            + " ten simulated colonies fall inside it.",
        "class",
        "fine");
    h.close().open("main");
    PageHead.end(
        h,
        notes,
        facts,
        "Beside this page are sheet.csv with the sheet, and results.jsonl with every figure, a line"
            + " for each hive.");
    return h.finish();
  }
}
