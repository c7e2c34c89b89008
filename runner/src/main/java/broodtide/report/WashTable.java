package broodtide.report;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.YearStages;
import broodtide.fit.ExpectedWashes;
import broodtide.results.ColonyResult;
import broodtide.terminal.Table;
import broodtide.wash.BoardCount;
import broodtide.wash.Infestation;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import broodtide.words.Answer;
import broodtide.words.BoardWords;
import broodtide.words.Digits;
import broodtide.words.Odds;
import broodtide.words.Plain;
import java.util.List;
import java.util.Optional;

/** What the washes of one colony say, one by one. */
record WashTable(ColonyResult result) {
  private static final double LEVEL = 0.9;
  private static final String OVER = "Over the treatment threshold";

  void write(HtmlWriter h, String heading) {
    h.element(heading, "What the washes say");
    List<ExpectedWashes.Check> checks = result.checks();
    List<BoardCount> boards = result.comparison().colony().boards();
    if (!boards.isEmpty()) {
      boards(h, boards);
    }
    if (checks.isEmpty()) {
      h.element(
          "p",
          boards.isEmpty()
              ? "There are no washes; the start is as the study gives it."
              : "There are no washes; one narrows these figures a good deal.");
      return;
    }
    h.open("table", "class", "cards", "role", "table");
    h.element(
        "caption",
        "Mites per 100 bees as counted, with the exact 90 % interval of the count alone (binomial;"
            + " Poisson where the bees were not counted). Thresholds are held against what an"
            + " alcohol wash would have shown.");
    h.open("thead", "role", "rowgroup").open("tr", "role", "row");
    for (String title : List.of("Day", "Count", "Per 100 bees", OVER, "Fit")) {
      h.element("th", title, "scope", "col", "role", "columnheader");
    }
    h.close().close();
    h.open("tbody", "role", "rowgroup");
    checks.forEach(check -> row(h, check));
    h.close().close();
    h.element(
        "p",
        "Fit: where the count falls among the washes expected of colonies that are consistent with"
            + " all counts.",
        "class",
        "fine");
  }

  /** Mites on boards, which are no infestation by themselves. */
  private void boards(HtmlWriter h, List<BoardCount> boards) {
    ColonyCase colony = result.comparison().colony();
    Table table =
        Table.of(
            Table.Column.words("Board out"),
            Table.Column.words("Fell"),
            Table.Column.words("Threshold"));
    for (BoardCount board : boards) {
      table =
          table.row(
              Plain.day(board.date()),
              BoardWords.perDay(board),
              BoardWords.threshold(colony, board));
    }
    new AnswerSheet.Shown(
            table,
            "Mites fallen on a board. What falls differs widely between hives, so boards are read"
                + " with a wide factor.")
        .write(h);
  }

  private void row(HtmlWriter h, ExpectedWashes.Check check) {
    Wash w = check.wash();
    h.open("tr", "role", "row");
    h.element("th", Plain.day(w.date()), "scope", "row", "role", "rowheader");
    cell(h, "Count", count(w), sample(w));
    Interval exact = Infestation.of(w).exact(LEVEL);
    cell(h, "Per 100 bees", Digits.two(w.perHundred()), Digits.range(exact.low(), exact.high()));
    threshold(h, w);
    cell(h, "Fit", place(check.place()), "");
    h.close();
  }

  private void threshold(HtmlWriter h, Wash w) {
    ColonyCase colony = result.comparison().colony();
    YearStages stages = colony.stages();
    Optional<Double> threshold = stages.thresholdOn(colony.thresholds(), w.date());
    if (threshold.isEmpty()) {
      cell(h, OVER, "-", "no treatment threshold on this day " + colony.thresholds().where());
      return;
    }
    double chance = Infestation.of(w).asAlcoholWash().chanceAbove(threshold.get());
    cell(
        h,
        OVER,
        chance(Math.max(0, Math.min(1, chance))),
        "threshold "
            + Answer.thresholdWords(colony.thresholds(), threshold.get())
            + ", "
            + stages.on(w.date()).title());
  }

  /** A chance about one day, of which "never" would be said wrongly. */
  private static String chance(double chance) {
    String words = Odds.words(chance);
    return words.equals("almost never") ? "almost certainly not" : words;
  }

  private static void cell(HtmlWriter h, String title, String middle, String more) {
    h.open("td", "role", "cell", "data-head", title).open("span").element("b", middle);
    if (!more.isEmpty()) {
      h.text(" ").open("small").given(more).close();
    }
    h.close().close();
  }

  private static String count(Wash w) {
    String mites = Digits.counted(w.mites(), "mite");
    return w.beesAssumed()
        ? mites + " in a half cup"
        : mites + " in " + Digits.count(Math.round(w.beesOrAssumed())) + " bees";
  }

  private static String sample(Wash w) {
    String counted =
        w.beesAssumed() ? "not counted, taken as " + Digits.two(w.beesOrAssumed()) + "; " : "";
    String note = w.note().isBlank() ? "" : "; \u201c" + w.note() + "\u201d";
    return counted + words(w.method().id()) + ", " + frame(w) + note;
  }

  private static String frame(Wash w) {
    return switch (w.frame()) {
      case BROOD_CENTRE -> "middle of the brood nest";
      case BROOD_EDGE -> "edge of the brood nest";
      case HONEY -> "honey frame";
      case MIXED -> "mixed frames";
    };
  }

  private static String words(String id) {
    return id.replace('-', ' ');
  }

  /** Where a wash stands in what was expected, in words. */
  static String place(double place) {
    if (place < 0.05 || place > 0.95) {
      return place < 0.5 ? "surprisingly few" : "surprisingly many";
    }
    if (place < 0.25 || place > 0.75) {
      return place < 0.5 ? "on the low side" : "on the high side";
    }
    return "as expected";
  }
}
