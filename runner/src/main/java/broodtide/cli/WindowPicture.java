package broodtide.cli;

import broodtide.compare.Obstacle;
import broodtide.compare.Outcome;
import broodtide.compare.Windows;
import broodtide.report.Digits;
import broodtide.report.Heading;
import broodtide.report.Plain;
import broodtide.report.WindowMap;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Windows as a map and as the short words of a table. */
final class WindowPicture {
  private WindowPicture() {}

  static WindowMap of(Windows w) {
    Outcome o = w.outcome();
    List<WindowMap.Row> rows = new ArrayList<>();
    for (Windows.Row row : w.rows()) {
      rows.add(
          new WindowMap.Row(
              row.control().name(), row.cells().stream().map(c -> cell(o, c)).toList()));
    }
    double near = w.best().map(w::tolerance).orElse(0.0) * o.shownTimes();
    double shown = new BigDecimal(near).round(new MathContext(2)).doubleValue();
    return WindowMap.of(heading(w), o.title(), true, shown, w.starts(), rows);
  }

  private static WindowMap.Cell cell(Outcome o, Windows.Cell cell) {
    if (cell instanceof Windows.Played played) {
      return new WindowMap.Outcome(played.middle() * o.shownTimes());
    }
    Obstacle.Kind kind = ((Windows.Blocked) cell).obstacle().kind();
    return new WindowMap.Masked(kind.code(), kind.reason());
  }

  private static Heading heading(Windows w) {
    Outcome o = w.outcome();
    String title =
        w.best()
            .map(
                row ->
                    "Best of these: "
                        + row.control().name()
                        + " from "
                        + Plain.day(w.starts().get(row.best().orElseThrow())))
            .orElse("None of these controls can be begun on these days");
    return new Heading(
        title,
        "Colony "
            + w.colony().colony()
            + ": first day of each control; "
            + OutcomeWords.value(o, w.ifYouWait())
            + " if you wait");
  }

  /** A gain or a cost with its sign, in the unit of the table. */
  static String signed(Outcome o, double mean) {
    double shown = mean * o.shownTimes();
    if (Math.abs(shown) < 0.05) {
      return "0";
    }
    String digits =
        Math.abs(shown) < 10
            ? String.format(Locale.ROOT, "%.1f", Math.abs(shown))
            : Digits.two(Math.abs(shown));
    return (shown < 0 ? "-" : "+") + digits;
  }

  /** Why and on how many of the days a control is ruled out. */
  static Optional<String> ruledOut(Windows w, Windows.Row row) {
    Map<Obstacle.Kind, List<LocalDate>> days = new EnumMap<>(Obstacle.Kind.class);
    for (int i = 0; i < w.starts().size(); i++) {
      if (row.cells().get(i) instanceof Windows.Blocked b) {
        days.computeIfAbsent(b.obstacle().kind(), k -> new ArrayList<>()).add(w.starts().get(i));
      }
    }
    List<String> out = new ArrayList<>();
    days.forEach(
        (kind, list) ->
            out.add(
                kind.reason()
                    + " ("
                    + list.size()
                    + (list.size() == 1 ? " day, " : " days, ")
                    + Plain.shortDay(list.get(0))
                    + (list.size() == 1 ? "" : " to " + Plain.shortDay(list.get(list.size() - 1)))
                    + ")"));
    return out.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", out) + ".");
  }
}
