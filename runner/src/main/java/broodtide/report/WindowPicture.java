package broodtide.report;

import broodtide.catalog.Obstacle;
import broodtide.chart.Heading;
import broodtide.chart.WindowMap;
import broodtide.decision.Windows;
import broodtide.words.Digits;
import broodtide.words.OutcomeWords;
import broodtide.words.Plain;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Windows as a map and as the short words of a table. */
public final class WindowPicture {
  private WindowPicture() {}

  /**
   * {@return the map}
   *
   * @param w a finished search
   */
  public static WindowMap of(Windows w) {
    broodtide.assessment.Outcome o = w.outcome();
    List<WindowMap.Row> rows = new ArrayList<>();
    for (Windows.Row row : w.rows()) {
      rows.add(
          new WindowMap.Row(
              row.control().name(),
              IntStream.range(0, w.starts().size()).mapToObj(i -> cell(w, row, i)).toList()));
    }
    return WindowMap.of(heading(w), o.title(), true, w.starts(), rows);
  }

  private static WindowMap.Cell cell(Windows w, Windows.Row row, int column) {
    Windows.Cell cell = row.cells().get(column);
    if (cell instanceof Windows.Played played) {
      return new WindowMap.Outcome(
          played.middle() * w.outcome().shownTimes(),
          w.labelDecides(row, column),
          w.tied(row, column));
    }
    Obstacle.Kind kind = ((Windows.Blocked) cell).obstacle().kind();
    return new WindowMap.Masked(kind.code(), kind.reason());
  }

  private static Heading heading(Windows w) {
    broodtide.assessment.Outcome o = w.outcome();
    String title =
        w.best()
            .map(
                row ->
                    "Lowest in the model: "
                        + row.control().name()
                        + " from "
                        + Plain.day(w.starts().get(row.best().orElseThrow())))
            .orElse("None of these controls can be begun on these days");
    return new Heading(
        title,
        "Colony "
            + w.colony().colony()
            + ": start date of each control; "
            + OutcomeWords.named(o, w.ifYouWait())
            + " if you wait");
  }

  /**
   * {@return a gain or a cost with its sign, in the unit of the table}
   *
   * @param o what plans are judged by
   * @param mean a difference in the unit of the outcome
   */
  public static String signed(broodtide.assessment.Outcome o, double mean) {
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

  /**
   * {@return why and when a control is ruled out: {@code too cold 12 Nov to 10 Dec}}
   *
   * @param w a finished search
   * @param row a row of it
   */
  public static Optional<String> ruledOut(Windows w, Windows.Row row) {
    Map<Obstacle.Kind, List<String>> stretches = new EnumMap<>(Obstacle.Kind.class);
    for (int i = 0; i < w.starts().size(); ) {
      int first = i++;
      if (row.cells().get(first) instanceof Windows.Blocked b) {
        while (i < w.starts().size() && sameKind(row.cells().get(i), b)) {
          i++;
        }
        stretches
            .computeIfAbsent(b.obstacle().kind(), k -> new ArrayList<>())
            .add(stretch(w, new Windows.Stretch(first, i - 1)));
      }
    }
    List<String> out = new ArrayList<>();
    stretches.forEach(
        (kind, days) -> {
          String reason = kind.reason();
          String begun = out.isEmpty() ? reason : Plain.capital(reason);
          out.add(begun + " " + String.join(", ", days) + ".");
        });
    return out.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", out));
  }

  /**
   * {@return when a control is open only where its label allows it under honey supers: {@code 1 Jul
   * to 29 Jul}}
   *
   * @param w a finished search
   * @param row a row of it
   */
  public static Optional<String> labelDecides(Windows w, Windows.Row row) {
    List<String> out = new ArrayList<>();
    for (int i = 0; i < w.starts().size(); ) {
      int first = i++;
      if (w.labelDecides(row, first)) {
        while (i < w.starts().size() && w.labelDecides(row, i)) {
          i++;
        }
        out.add(stretch(w, new Windows.Stretch(first, i - 1)));
      }
    }
    return out.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", out));
  }

  private static boolean sameKind(Windows.Cell cell, Windows.Blocked other) {
    return cell instanceof Windows.Blocked b && b.obstacle().kind() == other.obstacle().kind();
  }

  /**
   * {@return a stretch of start days: {@code 6 Aug to 20 Aug}}
   *
   * @param w a finished search
   * @param s days that are about as good
   */
  public static String stretch(Windows w, Windows.Stretch s) {
    String first = Plain.shortDay(w.starts().get(s.first()));
    return s.first() == s.last()
        ? first + " only"
        : first + " to " + Plain.shortDay(w.starts().get(s.last()));
  }
}
