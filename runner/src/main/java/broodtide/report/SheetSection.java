package broodtide.report;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Decision;
import broodtide.assessment.HiveRow;
import broodtide.assessment.PlanSummary;
import broodtide.assessment.QuantileSummary;
import broodtide.chart.Size;
import broodtide.wash.BoardCount;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.words.ApiaryWords;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The sheet of an apiary on the page, which prints on a page of its own.
 *
 * @param sheet the apiary
 * @param plans one plan for the whole apiary, see {@link ApiarySheet#together}
 * @param thresholds the set that its hives are held to
 * @param places identifiers of the sections of the hives, by name; none for a hive without one
 */
record SheetSection(
    ApiarySheet sheet,
    List<ApiaryPlan> plans,
    ThresholdSet thresholds,
    Map<String, String> places) {
  private record Cell(String middle, String more) {}

  void write(HtmlWriter h) {
    h.element("p", ApiaryWords.headline(sheet, thresholds), "class", "lead");
    table(h);
    together(h);
    ApiaryWords.nextCounts(sheet).forEach(s -> h.element("p", s));
    List<String> washes = ApiaryWords.washNext(sheet);
    if (!washes.isEmpty()) {
      h.element("p", String.join(" ", washes));
    }
    h.figure(
        ApiaryPicture.of(sheet, thresholds),
        Size.PHONE,
        "Each hive today and on the day that is judged, with 90 % intervals, on a logarithmic"
            + " scale: equal steps to the right are equal factors.");
  }

  /** One plan for the whole apiary, and how far counts of hives are to be trusted. */
  private void together(HtmlWriter h) {
    if (!plans.isEmpty()) {
      new AnswerSheet.Shown(
              SheetTerminalTable.of(plans), "One plan for the whole apiary. " + ApiaryWords.WHOLE)
          .write(h);
    }
    if (sheet.over().isPresent()) {
      h.element("p", ApiaryWords.BETWEEN, "class", "fine");
    }
  }

  private void table(HtmlWriter h) {
    List<String> heads = heads();
    h.open("table", "class", "cards figures sheet", "role", "table");
    h.element(
        "caption",
        "The most urgent hive first: those that are probably over the treatment threshold, then by"
            + (sheet.knowsWinterLoss() ? " winter loss." : " infestation on the judged day."));
    h.open("thead", "role", "rowgroup").open("tr", "role", "row");
    heads.forEach(head -> h.element("th", head, "scope", "col", "role", "columnheader"));
    h.close().close();
    h.open("tbody", "role", "rowgroup");
    for (HiveRow row : sheet.rows()) {
      h.open("tr", "role", "row").open("th", "scope", "row", "role", "rowheader");
      String place = places.get(row.hive());
      if (place == null) {
        h.given(row.hive());
      } else {
        h.open("a", "href", "#" + place).given(row.hive()).close();
      }
      row.nextCount().ifPresent(next -> h.element("small", ApiaryWords.mark(next)));
      h.close();
      List<Cell> cells = cells(row);
      for (int i = 0; i < cells.size(); i++) {
        Cell cell = cells.get(i);
        h.open("td", "role", "cell", "data-head", heads.get(i + 1)).open("span");
        h.open("b").given(cell.middle()).close();
        if (!cell.more().isEmpty()) {
          h.text(" ").open("small").given(cell.more()).close();
        }
        h.close().close();
      }
      h.close();
    }
    h.close().close();
  }

  private List<String> heads() {
    List<String> heads = new ArrayList<>();
    heads.add("Hive");
    heads.add("Last count");
    heads.add("Per 100 bees today");
    heads.add("Over the threshold today");
    heads.add("Per 100 on " + Plain.shortDay(sheet.judgedOn()) + " if you wait");
    if (sheet.knowsWinterLoss()) {
      heads.add("Winter loss if you wait");
    }
    if (sheet.plansLaid()) {
      heads.add(
          sheet.knowsWinterLoss() ? "Lowest winter loss of the plans" : "Lowest of the plans");
      if (sheet.knowsWinterLoss()) {
        heads.add("Gain");
      }
    }
    return heads;
  }

  private List<Cell> cells(HiveRow row) {
    Decision d = row.decision();
    List<Cell> cells = new ArrayList<>();
    cells.add(
        row.lastBoard()
            .map(SheetSection::count)
            .or(() -> row.lastCount().map(SheetSection::count))
            .orElse(new Cell("-", "")));
    cells.add(band(row.infestation()));
    cells.add(chance(d.overThresholdToday(), ""));
    cells.add(band(row.judged()));
    if (sheet.knowsWinterLoss()) {
      cells.add(chance(row.winterLoss(), ""));
    }
    if (sheet.plansLaid()) {
      cells.add(new Cell(d.best().plan().name(), when(d)));
      if (sheet.knowsWinterLoss()) {
        cells.add(
            d.best().waits()
                ? new Cell("-", "")
                : chance(row.gain(), loss(row.winterLossWithBest())));
      }
    }
    return cells;
  }

  private static Cell count(BoardCount board) {
    return new Cell(
        Digits.counted(board.mites(), "mite") + " on a board",
        Plain.shortDay(board.date()) + ", " + Digits.two(board.perDay()) + " a day");
  }

  private static Cell count(Wash w) {
    return new Cell(
        Digits.counted(w.mites(), "mite")
            + (w.beesAssumed()
                ? " in a half cup"
                : " in " + Digits.count(Math.round(w.beesOrAssumed())) + " bees"),
        Plain.shortDay(w.date()) + ", " + Digits.two(w.perHundred()) + " per 100");
  }

  private static Cell band(QuantileSummary s) {
    return new Cell(Plain.level(s.median()), Plain.levels(s.q05(), s.q95()));
  }

  private static Cell chance(OptionalDouble chance, String more) {
    return chance.isEmpty()
        ? new Cell("-", "")
        : new Cell(Digits.chance(chance.getAsDouble()), more);
  }

  private static String loss(OptionalDouble with) {
    return with.isEmpty() ? "" : "to " + Digits.chance(with.getAsDouble());
  }

  /** When the best plan begins, and how many others cannot be told from it. */
  private static String when(Decision d) {
    PlanSummary best = d.best();
    String from = best.from().map(day -> "from " + Plain.shortDay(day)).orElse("");
    int tied = d.tied().size();
    String others = tied == 0 ? "" : "tied with " + Digits.counted(tied, "other");
    return from.isEmpty() || others.isEmpty() ? from + others : from + "; " + others;
  }
}
