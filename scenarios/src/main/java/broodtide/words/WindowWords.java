package broodtide.words;

import broodtide.assessment.Decision;
import broodtide.assessment.Difference;
import broodtide.assessment.PlanRanking;
import broodtide.decision.Windows;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** When to begin, in plain sentences: the best time, how flat it is, and what a delay costs. */
public final class WindowWords {
  private WindowWords() {}

  /**
   * {@return the best start of a single control, in one short line}
   *
   * @param w a finished search
   */
  public static String first(Windows w) {
    Optional<Windows.Row> best = w.best();
    if (best.isEmpty()) {
      return "None of these controls can be begun on any of these days.";
    }
    Windows.Row row = best.get();
    int column = row.best().orElseThrow();
    return "Best single start: "
        + row.control().name()
        + ", "
        + Plain.shortDay(w.starts().get(column))
        + "; "
        + OutcomeWords.named(w.outcome(), row.middle(column).orElseThrow())
        + ".";
  }

  /**
   * {@return whether another control, begun on its best day, is tied with the best of all}
   *
   * @param w a finished search
   */
  public static boolean ties(Windows w) {
    return w.rows().stream().filter(row -> tied(w, row)).count() > 1;
  }

  /**
   * {@return whether a control, begun on its best day, is the best of all or tied with it}
   *
   * @param w a finished search
   * @param row a row of it
   */
  public static boolean tied(Windows w, Windows.Row row) {
    return row.best().filter(day -> w.tied(row, day)).isPresent();
  }

  /**
   * {@return what follows: how flat the best time is, what a delay costs, and whether the label has
   * a say}
   *
   * @param w a finished search
   */
  public static List<String> further(Windows w) {
    Optional<Windows.Row> best = w.best();
    if (best.isEmpty()) {
      return List.of();
    }
    Windows.Row row = best.get();
    int column = row.best().orElseThrow();
    List<String> out = new ArrayList<>(List.of(flatness(w, row), delay(w, row, column)));
    if (ties(w)) {
      out.add(
          "Tied with it, each on its best day: "
              + w.rows().stream()
                  .filter(other -> other != row && tied(w, other))
                  .map(other -> other.control().name())
                  .collect(Collectors.joining(", "))
              + ". Choose by label, weather and effort.");
    }
    if (w.labelDecides(row, column)) {
      out.add("Supers are usually on then; the label decides whether it may be used.");
    }
    return out;
  }

  /**
   * {@return what to say where a single course begun on one of these days loses clearly less than
   * the best of the usual plans; empty where it does not}
   *
   * @param w a finished search, judged by the loss of the colony
   * @param decision what the usual plans lead to
   */
  public static Optional<String> beyond(Windows w, Decision decision) {
    if (w.outcome() != broodtide.assessment.Outcome.LOST) {
      return Optional.empty();
    }
    double best =
        decision.ranking().map(r -> r.best().winterLoss()).orElse(Double.NEGATIVE_INFINITY);
    return w.best()
        .flatMap(row -> row.middle(row.best().orElseThrow()))
        .filter(loss -> best - loss >= PlanRanking.APART)
        .map(
            loss ->
                "That single course loses fewer colonies than the best of the usual plans;"
                    + " compare it with 'broodtide compare --plan'.");
  }

  private static String flatness(Windows w, Windows.Row row) {
    Windows.Stretch good = w.asGood(row).orElseThrow();
    LocalDate first = w.starts().get(good.first());
    LocalDate last = w.starts().get(good.last());
    if (w.tolerance(row) == 0) {
      return "No start day gains anything over waiting.";
    }
    return first.equals(last)
        ? "The best time is narrow: no neighbouring start day keeps nine tenths of its gain."
        : "Any start from "
            + Plain.day(first)
            + " to "
            + Plain.day(last)
            + " keeps at least nine tenths of its gain.";
  }

  private static String delay(Windows w, Windows.Row row, int column) {
    Optional<Difference> week = w.delay(row, column, 7);
    Optional<Difference> month = w.delay(row, column, 28);
    if (week.isEmpty()) {
      return "A week later it cannot be begun, or lies outside the days tried.";
    }
    String words = "Beginning a week later " + OutcomeWords.cost(w.outcome(), week.get());
    if (OutcomeWords.nothing(w.outcome(), week.get())
        && month.isPresent()
        && OutcomeWords.nothing(w.outcome(), month.get())) {
      return "Beginning up to four weeks later makes next to no difference.";
    }
    return month
        .map(m -> words + ". Four weeks later it " + OutcomeWords.cost(w.outcome(), m) + ".")
        .orElse(words + ".");
  }
}
