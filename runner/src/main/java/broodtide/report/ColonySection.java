package broodtide.report;

import broodtide.assessment.Comparison;
import broodtide.assessment.PlanRun;
import broodtide.chart.SeasonChart;
import broodtide.chart.Size;
import broodtide.chart.WindowMap;
import broodtide.decision.Windows;
import broodtide.results.ColonyResult;
import broodtide.words.Answer;
import broodtide.words.EfficacyWords;
import broodtide.words.FirstLines;
import broodtide.words.WindowWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** The section of the page about one colony: chart, plans, washes, and what was learned. */
record ColonySection(ColonyResult result, SeasonChart chart, boolean several) {
  /** For phones: as wide as {@link Size#PHONE}, and higher, for the key takes room of its own. */
  private static final Size UPRIGHT = new Size(Size.PHONE.width(), 660);

  private static final Size MAP = new Size(Size.PHONE.width(), 240);

  /** How to read the chart of a season. */
  static final String CHART =
      "Dots with bars are the washes with their 90 % intervals, corrected for the method and the"
          + " frame. The dashed step is the treatment threshold, where there is one. The scale is"
          + " logarithmic: equal steps up are equal factors.";

  /** How to read the figures of plans. */
  static final String FIGURES =
      "Each figure is a median, with its 90 % interval below where there is one.";

  HtmlWriter write(String id) {
    HtmlWriter h = HtmlWriter.piece();
    h.open("section", "id", id, "class", "colony");
    if (several) {
      h.open("h2").text("Colony ").given(result.comparison().colony().colony()).close();
      answer(h);
    }
    chart(h);
    plans(h);
    if (several) {
      h.open("details").element("summary", "More of this hive");
      new Answer(result.comparison()).further().forEach(sentence -> h.element("p", sentence));
      EfficacyWords.sentence(result.comparison()).ifPresent(words -> h.element("p", words));
      inWords(h, result.comparison());
    }
    result.windows().ifPresent(w -> windows(h, w));
    inside(h);
    new WashTable(result).write(h, level());
    new LearnedTable(result).write(h, level());
    PosteriorPicture.of(result.comparison())
        .ifPresent(
            picture ->
                h.figure(
                    picture,
                    Size.PHONE,
                    "Dashed: before the washes. Filled: with them. Where the two are alike, the"
                        + " washes said little."));
    SensitivityPicture.of(result)
        .ifPresent(
            picture ->
                h.figure(
                    picture,
                    Size.PHONE,
                    "What each unknown accounts for by itself, on a logarithmic scale of mites."
                        + " Faint bars: no clear effect."));
    if (several) {
      h.element("h3", "What would change this answer");
      AnswerDrivers.list(h, AnswerDrivers.of(result));
      h.close();
    }
    return h.close();
  }

  /** What was said of the hive, where the page does not open with it. */
  private void answer(HtmlWriter h) {
    Comparison comparison = result.comparison();
    first(h, FirstLines.of(comparison));
    Answer.contradiction(result.agreement()).ifPresent(s -> h.element("p", s, "class", "warning"));
  }

  /** The first lines: where the hive stands and what waiting leads to, then the others. */
  static void first(HtmlWriter h, List<String> lines) {
    h.element("p", String.join(" ", lines.subList(0, 2)), "class", "lead");
    lines.subList(2, lines.size()).forEach(line -> h.element("p", line));
  }

  private String level() {
    return several ? "h3" : "h2";
  }

  private void chart(HtmlWriter h) {
    h.element(level(), "The season");
    h.figure(chart, UPRIGHT, several ? "" : CHART);
  }

  private void inside(HtmlWriter h) {
    h.element(level(), "Inside the hive");
    h.figure(
        PlanPictures.inside(result),
        Size.PHONE,
        "Above: of each 100 mites, where they are; a wash finds only those on adult bees. Middle:"
            + " the colony: the thicker, the stronger. Below: bees with virus. All others are"
            + " healthy.");
  }

  private void windows(HtmlWriter h, Windows w) {
    WindowMap map = WindowPicture.of(w);
    h.element(level(), "When to begin");
    h.element("p", WindowWords.first(w));
    WindowWords.further(w).forEach(sentence -> h.element("p", sentence));
    h.figure(
        map,
        MAP,
        "Each cell is a start date, one a week: the darker, the worse. Hatched days are usually"
            + " ruled out by honey supers, temperature or brood; the label decides."
            + (map.labelDecides()
                ? " A line along the top: supers are on then, and some labels allow the"
                    + " control under them."
                : ""));
  }

  private void plans(HtmlWriter h) {
    Comparison comparison = result.comparison();
    h.element(level(), comparison.runs().size() == 1 ? "In figures" : "The plans in figures");
    Set<String> tied = table(h, comparison, columns(comparison));
    if (!tied.isEmpty()) {
      h.element("p", "=: these plans cannot be told apart.", "class", "fine");
    }
    if (!several) {
      h.append(meanings(comparison));
      EfficacyWords.sentence(comparison).ifPresent(words -> h.element("p", words));
      inWords(h, comparison);
    }
  }

  /** The plans with the two figures first that decide, and what stands against each. */
  static void lossFirst(HtmlWriter h, Comparison comparison) {
    List<PlanColumn> columns = new ArrayList<>(columns(comparison));
    columns.sort(Comparator.comparingInt(ColonySection::rank));
    Set<String> tied = table(h, comparison, columns);
    if (!tied.isEmpty()) {
      h.element("p", "=: these plans cannot be told apart.", "class", "fine");
    }
    inWords(h, comparison);
  }

  private static int rank(PlanColumn column) {
    return switch (column.head()) {
      case "loss", "lost" -> 0;
      case "brood" -> 1;
      default -> 2;
    };
  }

  /** Writes the table; returns the plans that cannot be told apart. */
  private static Set<String> table(HtmlWriter h, Comparison comparison, List<PlanColumn> columns) {
    h.open("table", "class", "cards figures", "role", "table");
    h.element("caption", FIGURES);
    h.open("thead", "role", "rowgroup").open("tr", "role", "row");
    head(h, "Plan");
    columns.forEach(c -> head(h, c.title()));
    h.close().close();
    h.open("tbody", "role", "rowgroup");
    Set<String> tied = PlanTerminalTable.level(comparison);
    for (PlanRun run : comparison.runs()) {
      row(h, run, tied.contains(run.plan().name()), columns);
    }
    h.close().close();
    return tied;
  }

  /** Whether a column has anything to say of any plan. */
  private static boolean says(PlanColumn column, Comparison comparison) {
    return comparison.runs().stream()
        .anyMatch(run -> !column.cell().apply(run).equals(PlanColumn.Cell.NONE));
  }

  private static void head(HtmlWriter h, String title) {
    h.element("th", title, "scope", "col", "role", "columnheader");
  }

  private static void row(HtmlWriter h, PlanRun run, boolean tied, List<PlanColumn> columns) {
    h.open("tr", "role", "row");
    h.open("th", "scope", "row", "role", "rowheader").given(run.plan().name());
    h.text(tied ? " =" : "").close();
    for (PlanColumn c : columns) {
      PlanColumn.Cell cell = c.cell().apply(run);
      h.open("td", "role", "cell", "data-head", c.title());
      h.open("span").element("b", cell.middle());
      if (!cell.range().isEmpty()) {
        h.text(" ").element("small", cell.range());
      }
      h.close().close();
    }
    h.close();
  }

  private static List<PlanColumn> columns(Comparison comparison) {
    return PlanColumns.of(comparison).stream().filter(c -> says(c, comparison)).toList();
  }

  /** What the columns of the table of plans mean. */
  static HtmlWriter meanings(Comparison comparison) {
    HtmlWriter h = HtmlWriter.piece();
    h.open("dl", "class", "meanings");
    for (PlanColumn c : columns(comparison)) {
      h.open("div").element("dt", c.title()).element("dd", c.meaning()).close();
    }
    return h.close();
  }

  private static void inWords(HtmlWriter h, Comparison comparison) {
    Answer answer = new Answer(comparison);
    h.element("p", answer.itemHead());
    h.open("ul", "class", "words");
    for (PlanRun run : comparison.runs()) {
      h.open("li").open("strong").given(run.plan().name()).close();
      h.text(": " + answer.item(run));
      for (String objection : run.objections()) {
        h.text(" Note: " + objection + ".");
      }
      h.close();
    }
    for (Comparison.Refused refused : comparison.refused()) {
      h.open("li").open("strong").given(refused.plan()).close();
      h.text(" is left out: " + refused.reason() + ".").close();
    }
    h.close();
  }
}
