package broodtide.report;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.PlanRun;
import broodtide.assessment.Sensitivity;
import broodtide.catalog.Assumptions;
import broodtide.engine.Quantity;
import broodtide.results.ColonyResult;
import broodtide.words.Answer;
import broodtide.words.Digits;
import broodtide.words.Plain;
import broodtide.words.PrecisionWords;
import broodtide.words.UnknownWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** What would change the answer: figures of the run itself, and what holds by construction. */
final class AnswerDrivers {
  /** An unknown that accounts for less of the spread of the forecast is not spoken of; choice. */
  private static final double MATTERS = 0.05;

  private static final int MOST_UNKNOWNS = 3;
  private static final int SAMPLE = 300;

  private AnswerDrivers() {}

  static void write(HtmlWriter h, List<PagePart> parts) {
    h.open("section").element("h2", "What would change this answer");
    if (parts.size() == 1) {
      list(h, parts.get(0).turns());
    }
    list(h, general(parts));
    h.close();
  }

  static void list(HtmlWriter h, List<String> lines) {
    h.open("ul");
    lines.forEach(line -> h.element("li", line));
    h.close();
  }

  /** What would change the answer for one colony. */
  static List<String> of(ColonyResult result) {
    Answer answer = new Answer(result.comparison());
    List<String> out = new ArrayList<>(unknowns(result, answer));
    out.add(anotherWash(result.comparison().colony(), answer));
    String weak =
        result.comparison().runs().stream()
            .filter(r -> treatedBy(r, answer.day()) && r.shareLost(answer.day()) <= 0.5)
            .map(r -> Plain.level(answer.on(r).q95()) + " with " + r.plan().name())
            .collect(Collectors.joining("; "));
    if (!weak.isEmpty()) {
      out.add(
          "Treatments differ in how well they work. One simulated colony in 20 has more mites"
              + " per 100 bees than this on "
              + Plain.day(answer.day())
              + ": "
              + weak
              + ".");
    }
    return out;
  }

  private static boolean treatedBy(PlanRun run, LocalDate day) {
    return run.plan().courses().stream().anyMatch(c -> c.from().isBefore(day));
  }

  private static List<String> unknowns(ColonyResult result, Answer answer) {
    String plan = answer.first().plan().name();
    return result.sensitivity().stream()
        .filter(s -> s.index().differsFromZero() && s.index().share() >= MATTERS)
        .sorted(Comparator.comparingDouble((Sensitivity s) -> s.index().share()).reversed())
        .limit(MOST_UNKNOWNS)
        .map(
            s ->
                UnknownWords.of(s.unknown().unknown()).name()
                    + " explains about "
                    + Digits.percent(s.index().share())
                    + " of how far the simulated colonies differ in mites per 100 bees on "
                    + Plain.day(answer.day())
                    + " with \u201c"
                    + plan
                    + "\u201d.")
        .toList();
  }

  private static String anotherWash(ColonyCase c, Answer answer) {
    double now = answer.first().on(Quantity.INFESTATION, c.now()).median();
    double rate = Math.min(50, Math.max(0.3, now));
    return "Another wash, at "
        + Digits.two(rate)
        + " mites per 100 bees: "
        + PrecisionWords.sentence(rate, SAMPLE)
        + " It may move the forecast either way.";
  }

  private static List<String> general(List<PagePart> parts) {
    Assumptions usual = Assumptions.usual();
    List<String> out = new ArrayList<>();
    out.add(
        "Neighbours: with few colonies around, "
            + Digits.two(usual.sparseArrivals())
            + " mites a day arrive in season; with many, "
            + Digits.two(usual.denseArrivals())
            + " (Frey & Rosenkranz 2014). More arrivals mean more mites, above all after a"
            + " treatment. Run again with --neighbours isolated, sparse or dense to see, or change"
            + " \u201csurroundings\u201d in the study.");
    if (parts.stream().anyMatch(PagePart::treats)) {
      out.add(
          "A treatment that fails altogether, as where mites are resistant, leaves the colony with"
              + " the mites it would have without it. A wash two to four weeks after the end"
              + " shows it.");
    }
    out.add(
        "Another treatment threshold moves the dashed line and the chances of being over it, not"
            + " the forecast (--threshold).");
    out.add(
        "Anything done or happening that is not in the record: a treatment, a swarm, a new queen,"
            + " brood moved in or out.");
    return out;
  }
}
