package broodtide.report;

import broodtide.fit.Prior;
import broodtide.fit.UnknownSummary;
import broodtide.results.ColonyResult;
import broodtide.words.Digits;
import broodtide.words.LearnedWords;
import broodtide.words.UnknownWords;
import java.util.List;

/** What the washes taught of one colony, and what they left open. */
record LearnedTable(ColonyResult result) {
  void write(HtmlWriter h, String heading) {
    List<UnknownSummary> unknowns = result.comparison().posterior().summaries();
    h.element(heading, "What was learned of the colony");
    h.element("p", String.join(" ", LearnedWords.sentences(result.comparison().posterior())));
    h.open("table", "class", "cards", "role", "table");
    h.element("caption", "Median and 90 % interval, before and after the washes.");
    h.open("thead", "role", "rowgroup").open("tr", "role", "row");
    for (String title : List.of("Unknown", "Before", "After", "The washes said")) {
      h.element("th", title, "scope", "col", "role", "columnheader");
    }
    h.close().close();
    h.open("tbody", "role", "rowgroup");
    for (UnknownSummary u : unknowns) {
      UnknownWords words = UnknownWords.of(u, result.comparison().posterior());
      h.open("tr", "role", "row").open("th", "scope", "row", "role", "rowheader");
      h.text(words.name() + " ").element("small", words.unit()).close();
      Prior p = u.prior();
      cell(h, "Before", p.median(), p.at(-Prior.NINE_IN_TEN), p.at(Prior.NINE_IN_TEN));
      cell(h, "After", u.median(), u.low(), u.high());
      h.open("td", "role", "cell", "data-head", "The washes said");
      h.element("span", UnknownWords.said(u.learned())).close();
      h.close();
    }
    h.close().close();
  }

  private static void cell(HtmlWriter h, String title, double middle, double low, double high) {
    h.open("td", "role", "cell", "data-head", title).open("span");
    h.element("b", Digits.two(middle)).text(" ").element("small", Digits.range(low, high));
    h.close().close();
  }
}
