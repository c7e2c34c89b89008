package broodtide.words;

import broodtide.control.MiticideCourse;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.UnknownSummary;
import java.util.ArrayList;
import java.util.List;

/** What the washes taught about each unknown, in sentences for the beekeeper. */
public final class LearnedWords {
  /** Unknowns named in one sentence. */
  private static final int FEW = 3;

  private LearnedWords() {}

  /** One unknown by its name. */
  private record Named(String name, UnknownSummary summary) {
    boolean known() {
      return summary.prior().logSd() == 0;
    }
  }

  /**
   * {@return short sentences for each degree of knowledge, in the order much, something, little}
   * Unknowns whose priors leave no doubt are not mentioned.
   *
   * @param posterior the colonies that fit the washes
   */
  public static List<String> sentences(SeasonPosterior posterior) {
    List<String> out = new ArrayList<>();
    boolean washed = !posterior.washes().isEmpty();
    if (!washed && posterior.lastWash().equals(posterior.past().start())) {
      out.add("There are no washes; everything rests on what is usual.");
      return out;
    }
    List<String> much = new ArrayList<>();
    List<String> some = new ArrayList<>();
    List<String> little = new ArrayList<>();
    for (Named n : named(posterior)) {
      if (!n.known()) {
        switch (n.summary().learned()) {
          case MUCH -> much.add(n.name());
          case SOMETHING -> some.add(n.name());
          case LITTLE, LESS_SURE -> little.add(n.name());
        }
      }
    }
    String counts = washed ? "washes" : "boards";
    add(out, counts, "much", much);
    add(out, counts, "something", some);
    add(out, counts, "little", little);
    if (!little.isEmpty()) {
      out.add("There the forecast rests on what is usual.");
    }
    return out;
  }

  private static List<Named> named(SeasonPosterior posterior) {
    List<MiticideCourse> courses = posterior.past().plan().courses();
    return posterior.summaries().stream()
        .map(summary -> new Named(name(summary, courses) + since(posterior, summary), summary))
        .toList();
  }

  private static String since(SeasonPosterior posterior, UnknownSummary summary) {
    return summary.season() > 0
        ? " since " + Plain.day(posterior.seasonStart(summary.season()))
        : "";
  }

  private static String name(UnknownSummary summary, List<MiticideCourse> courses) {
    return switch (summary.unknown()) {
      case INFESTATION -> "mites per 100 bees at the start";
      case REPRODUCTION_FACTOR -> "how fast the mites breed";
      case LAYING_FACTOR -> "how much the queen lays";
      case START_SIZE -> "colony strength at the start";
      case REINVASION -> "reinvasion";
      case LATE_REINVASION -> "reinvasion late in the season";
      case OVERDISPERSION -> "variation between washes";
      case EFFICACY_FACTOR -> {
        MiticideCourse course = courses.get(summary.course());
        yield "how well \"" + course.name() + "\" of " + Plain.day(course.from()) + " worked";
      }
      case GROWTH_TO_COME -> "how fast the mites breed from the last wash on";
      case INFECTIVITY -> "how many mites carry virus";
    };
  }

  /** A few unknowns to a sentence, so that none grows long. */
  private static void add(List<String> out, String counts, String how, List<String> names) {
    for (int from = 0; from < names.size(); from += FEW) {
      List<String> few = names.subList(from, Math.min(from + FEW, names.size()));
      int last = few.size() - 1;
      String list =
          last == 0
              ? few.get(0)
              : String.join(", ", few.subList(0, last)) + " and " + few.get(last);
      String who =
          out.isEmpty() ? "Your " + counts + " say " : from == 0 ? "They say " : "They also say ";
      out.add(who + how + " about " + list + ".");
    }
  }
}
