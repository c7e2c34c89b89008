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

  private PosteriorNarrative() {}

  /** One unknown by its name. */
  private record Named(String name, UnknownSummary summary) {
    boolean known() {
      return summary.prior().logSd() == 0;
    }

    String band() {
      String low = two(summary.low());
      String high = two(summary.high());
      return switch (summary.unknown().unit()) {
        case PER_HUNDRED -> name + " (" + low + " to " + high + ")";
        case FACTOR -> name + " (" + low + " to " + high + " times the usual)";
        case SIZE, SHARE -> name;
      };
    }
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
    List<MiticideCourse> courses = posterior.past().plan().courses();
    return posterior.summaries().stream()
        .map(summary -> new Named(name(summary, courses) + since(posterior, summary), summary))
        .toList();
  }

  private static String since(SeasonPosterior posterior, UnknownSummary summary) {
    return summary.season() > 0 ? " since " + posterior.seasonStart(summary.season()) : "";
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
        yield "how well \"" + course.name() + "\" of " + course.from() + " worked";
      }
      case GROWTH_TO_COME -> "how fast the mites breed from the last wash on";
      case INFECTIVITY -> "how many mites carry virus";
    };
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
