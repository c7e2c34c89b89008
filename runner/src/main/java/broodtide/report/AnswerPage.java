package broodtide.report;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The answer of a command as one HTML page that needs nothing else: what was said on the terminal,
 * with tables and pictures. There is no script, and a content security policy forbids the browser
 * to run or load any.
 *
 * @param question what the command answers, the page's heading
 * @param sheets the colonies, or one sheet for all
 * @param notes what was assumed or passed over, in sentences
 * @param facts how it was made
 */
public record AnswerPage(
    String question, List<AnswerSheet> sheets, List<String> notes, RunFacts facts) {
  /** Copies the lists. */
  public AnswerPage {
    sheets = List.copyOf(sheets);
    notes = List.copyOf(notes);
  }

  /** {@return the document, UTF-8} The same input gives the same text. */
  public String html() {
    HtmlWriter h = HtmlWriter.document("en");
    String names =
        sheets.stream()
            .map(AnswerSheet::colony)
            .filter(n -> !n.isEmpty())
            .collect(Collectors.joining(", "));
    PageHead.write(h, question + (names.isEmpty() ? "" : ": " + names));
    h.open("body").open("header").element("h1", question);
    for (int i = 0; i < sheets.size(); i++) {
      AnswerSheet sheet = sheets.get(i);
      h.open("div", "class", "answer");
      if (!sheet.colony().isEmpty()) {
        h.open("p", "class", "whose").open("a", "href", "#" + id(i));
        h.text("Colony ").given(sheet.colony()).close().close();
      }
      // The first sentence is the answer; what follows it bears it out.
      String[] said = sheet.lead().split("(?<=[^.]\\.) (?=\\p{Lu})", 2);
      h.element("p", said[0], "class", "lead");
      if (said.length > 1) {
        h.element("p", said[1]);
      }
      h.close();
    }
    h.element("p", "These are estimates from a model, not instructions.", "class", "fine");
    h.close().open("main");
    for (int i = 0; i < sheets.size(); i++) {
      section(h, sheets.get(i), i);
    }
    PageHead.end(h, notes, facts, "Beside this page is results.json with every figure.");
    return h.finish();
  }

  private void section(HtmlWriter h, AnswerSheet sheet, int place) {

    h.open("section", "id", id(place), "class", "colony");
    if (sheets.size() > 1) {
      h.open("h2").text("Colony ").given(sheet.colony()).close();
    }
    sheet.write(h);
    h.close();
  }

  private static String id(int place) {
    return "colony-" + (place + 1);
  }
}
