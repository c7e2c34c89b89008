package broodtide.fit;

import broodtide.control.MiticideCourse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the washes taught about each unknown, in sentences for the beekeeper. */
public final class PosteriorNarrative {
  /** Shrinkage below which the washes said little, and from which they said much; choice. */
  private static final double LITTLE = 0.15;

  private static final double MUCH = 0.5;

  private static final List<String> NAMES =
      List.of(
          "mites per 100 bees at the start",
          "how fast the mites breed",
          "how much the queen lays",
          "how many bees the colony had at the start for such a queen",
          "mites from outside",
          "how far washes scatter");

  private PosteriorNarrative() {}

  /** One unknown by its name. */
  private record Named(String name, Unit unit, UnknownSummary summary) {
    boolean known() {
      return summary.prior().logSd() == 0;
    }

    String band() {
      String low = two(summary.low());
      String high = two(summary.high());
      return switch (unit) {
        case PER_HUNDRED -> name + " (" + low + " to " + high + ")";
        case FACTOR -> name + " (" + low + " to " + high + " times the usual)";
        case NONE -> name;
      };
    }
  }

  /** How to write an unknown's band. */
  private enum Unit {
    PER_HUNDRED,
    FACTOR,
    NONE
  }

  /**
   * {@return one sentence per degree of knowledge, in the order much, something, little; bands hold
   * nine in ten} Unknowns whose priors leave no doubt are not mentioned.
   *
   * @param posterior the colonies that fit the washes
   */
  public static List<String> sentences(SeasonPosterior posterior) {
    List<String> out = new ArrayList<>();
    if (posterior.washes().isEmpty()) {
      out.add("There are no washes; everything rests on what is usual.");
      return out;
    }
    List<String> much = new ArrayList<>();
    List<String> some = new ArrayList<>();
    List<String> little = new ArrayList<>();
    for (Named n : named(posterior)) {
      double shrinkage = n.summary().shrinkage();
      if (n.known()) {
        continue;
      }
      if (shrinkage >= MUCH) {
        much.add(n.band());
      } else if (shrinkage >= LITTLE) {
        some.add(n.band());
      } else {
        little.add(n.name());
      }
    }
    add(out, "Your washes say much about ", much, ".");
    add(out, "Your washes say something about ", some, ".");
    add(
        out,
        "Your washes say little about ",
        little,
        "; there the forecast rests on what is usual.");
    return out;
  }

  private static List<Named> named(SeasonPosterior posterior) {
    List<UnknownSummary> all = posterior.summaries();
    List<Named> out = new ArrayList<>();
    for (int i = 0; i < NAMES.size(); i++) {
      Unit unit = i == 0 ? Unit.PER_HUNDRED : i == NAMES.size() - 1 ? Unit.NONE : Unit.FACTOR;
      out.add(new Named(NAMES.get(i), unit, all.get(i)));
    }
    int next = NAMES.size();
    for (MiticideCourse course : posterior.past().plan().courses()) {
      String name = "how well \"" + course.name() + "\" of " + course.from() + " worked";
      out.add(new Named(name, Unit.FACTOR, all.get(next++)));
    }
    return out;
  }

  private static void add(List<String> out, String before, List<String> items, String after) {
    if (items.isEmpty()) {
      return;
    }
    int last = items.size() - 1;
    String list =
        last == 0
            ? items.get(0)
            : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
    out.add(before + list + after);
  }

  private static String two(double v) {
    int digits = v >= 10 ? 0 : v >= 1 ? 1 : 2;
    return String.format(Locale.ROOT, "%." + digits + "f", v);
  }
}
