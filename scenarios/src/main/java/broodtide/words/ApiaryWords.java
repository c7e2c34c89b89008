package broodtide.words;

import broodtide.assessment.ApiaryCount;
import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.CountSheet;
import broodtide.assessment.HiveRow;
import broodtide.assessment.NextCount;
import broodtide.assessment.Outcome;
import broodtide.assessment.WashGain;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the sheet of an apiary says in sentences. */
public final class ApiaryWords {
  /** As many names of hives can be read in a sentence. */
  private static final int MOST_NAMED = 30;

  /** Names that stand for a longer list. */
  private static final int FEW_NAMED = 8;

  private ApiaryWords() {}

  /**
   * {@return the apiary in one sentence: how many hives are over the treatment threshold}
   *
   * @param sheet the apiary
   * @param thresholds the set that its hives are held to
   */
  public static String headline(ApiarySheet sheet, ThresholdSet thresholds) {
    int hives = sheet.rows().size();
    if (sheet.threshold().isEmpty() || sheet.over().isEmpty()) {
      return Answer.noThreshold(sheet.date(), thresholds)
          + "; the sheet shows where each of "
          + hives
          + " hives stands.";
    }
    ApiaryCount count = sheet.over().get();
    return over(count.median(), hives)
        + " over the treatment threshold of "
        + Answer.thresholdWords(thresholds, sheet.threshold().getAsDouble())
        + " on "
        + Plain.day(sheet.date())
        + between(count)
        + ".";
  }

  private static String between(ApiaryCount count) {
    return count.hives() == 1 || count.low() == count.high()
        ? ""
        : ", between " + count.low() + " and " + count.high();
  }

  /** How far the interval of a count of hives is to be trusted. */
  public static final String BETWEEN =
      "Between two numbers of hives lies the 90 % interval; hives of a yard share their season. On"
          + " field counts such intervals held about 80 %.";

  /** What the figures of one plan for the whole apiary mean. */
  public static final String WHOLE =
      "lost: hives dead or too weak by spring, from any cause. saved: losses that treating"
          + " prevents, in the same simulated seasons. mites: those in hives when they are lost,"
          + " the most that robbers can carry to other hives.";

  /**
   * {@return how many losses a plan for the apiary saves on average: {@code 1.3}}
   *
   * @param plan the plan
   */
  public static String saved(ApiaryPlan plan) {
    double mean = plan.saved().mean();
    return Math.abs(mean) < 0.1 ? "under 0.1" : Digits.two(mean);
  }

  /**
   * {@return whom a plan is given to: {@code treat those over the threshold}}
   *
   * @param plan a plan for the apiary
   */
  public static String whom(ApiaryPlan plan) {
    return switch (plan.whom()) {
      case NONE -> "treat none";
      case THOSE_OVER -> "treat those over";
      case ALL -> "treat all";
    };
  }

  /**
   * {@return the counts of a day in one sentence: how many hives are over the treatment threshold}
   *
   * @param sheet the counts
   */
  public static String headline(CountSheet sheet) {
    int hives = sheet.hives();
    return sheet.threshold().isEmpty()
        ? Answer.noThreshold(sheet.date(), sheet.thresholds())
            + "; the sheet shows what each of "
            + Digits.counted(sheet.rows().size(), "count")
            + " says."
        : over(sheet.over().orElseThrow().median(), hives)
            + " over the treatment threshold of "
            + Answer.thresholdWords(sheet.thresholds(), sheet.threshold().getAsDouble())
            + " on "
            + Plain.day(sheet.date())
            + between(sheet.over().orElseThrow())
            + ", judged from these counts only.";
  }

  /**
   * {@return how hives are counted that have several counts on the day of a sheet; empty where none
   * has}
   *
   * @param sheet the counts
   */
  public static Optional<String> countedOften(CountSheet sheet) {
    List<String> hives = sheet.countedOften();
    return hives.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Counted more than once on that day: "
                + String.join(", ", hives)
                + ". Each stands for one hive in the number over the threshold; its counts are"
                + " read as one.");
  }

  /**
   * {@return how many of some hives: {@code About 3 of 8 hives are}}
   *
   * @param over hives counted
   * @param hives all hives, at least one
   */
  static String over(int over, int hives) {
    if (hives == 1) {
      return over == 1 ? "The hive is probably" : "The hive is probably not";
    }
    if (over == 0) {
      return "Probably none of " + hives + " hives is";
    }
    return over == hives
        ? "Probably all " + hives + " hives are"
        : "About " + over + " of " + hives + (over == 1 ? " hives is" : " hives are");
  }

  /**
   * {@return when the plans of the sheet begin, in one sentence; empty where none does anything}
   *
   * @param sheet the apiary
   */
  public static Optional<String> begins(ApiarySheet sheet) {
    Map<LocalDate, List<String>> byDay = new LinkedHashMap<>();
    sheet
        .plans()
        .forEach((plan, day) -> byDay.computeIfAbsent(day, d -> new ArrayList<>()).add(plan));
    return byDay.isEmpty()
        ? Optional.empty()
        : Optional.of(
            byDay.entrySet().stream()
                .map(e -> Plain.day(e.getKey()) + ": " + String.join(", ", e.getValue()))
                .collect(Collectors.joining("; ", "Plans begin on ", ".")));
  }

  /**
   * {@return what to do next for hives without enough counts, a sentence for each reason}
   *
   * @param sheet the apiary
   */
  public static List<String> nextCounts(ApiarySheet sheet) {
    Map<NextCount, List<String>> hives = new LinkedHashMap<>();
    for (HiveRow row : sheet.rows()) {
      row.nextCount()
          .ifPresent(next -> hives.computeIfAbsent(next, n -> new ArrayList<>()).add(row.hive()));
    }
    return hives.entrySet().stream()
        .map(e -> Plain.capital(next(e.getKey())) + ": " + names(e.getValue()) + ".")
        .toList();
  }

  /**
   * {@return which hives to wash before one decides, and how many; empty where that is not known}
   *
   * @param sheet the apiary
   */
  public static List<String> washNext(ApiarySheet sheet) {
    if (!sheet.knowsWashes()) {
      return List.of();
    }
    List<HiveRow> next = sheet.washNext();
    int hives = sheet.rows().size();
    if (next.isEmpty()) {
      return List.of(
          "For the choice between plans no further wash is worth it: none lowers winter loss by "
              + Digits.plain(100 * WashGain.WORTH)
              + " hives in 100.");
    }
    return List.of(
        "For the choice between plans, one more wash is worth it in "
            + (next.size() == hives
                ? "all " + hives + " hives"
                : next.size() + " of " + hives + " hives")
            + ", best first: "
            + names(next.stream().map(ApiaryWords::gain).toList())
            + ".",
        "In brackets: by how much that wash lowers winter loss, in hives of 100, each treatment"
            + " costing "
            + Digits.plain(100 * Outcome.LOST.usualCost())
            + ".");
  }

  private static String gain(HiveRow row) {
    return row.hive() + " (" + Digits.two(100 * row.wash().orElseThrow().gain()) + ")";
  }

  /**
   * {@return what to do next for one hive: {@code wash now, the last count is over 6 weeks old}}
   *
   * @param next the count that is needed
   */
  public static String next(NextCount next) {
    return switch (next.reason()) {
      case NO_COUNT -> "wash now, no bees were washed yet";
      case OLD_COUNT -> "wash now, the last count is over " + NextCount.OLD / 7 + " weeks old";
      case ONE_DAY ->
          "wash again by " + Plain.day(next.by()) + ", one count says nothing of growth";
    };
  }

  /**
   * {@return the same in two or three words, beside the name of the hive}
   *
   * @param next the count that is needed
   */
  public static String mark(NextCount next) {
    return switch (next.reason()) {
      case NO_COUNT -> "no wash";
      case OLD_COUNT -> "old count";
      case ONE_DAY -> "one count";
    };
  }

  /**
   * {@return sentences that hold for some hives, each said once; those that do not hold for all
   * begin with the names of the hives}
   *
   * @param byHive sentences by the name of the hive, in the order of the sheet
   */
  public static List<String> shared(Map<String, List<String>> byHive) {
    Map<String, List<String>> hives = new LinkedHashMap<>();
    byHive.forEach(
        (hive, sentences) ->
            sentences.stream()
                .distinct()
                .forEach(s -> hives.computeIfAbsent(s, k -> new ArrayList<>()).add(hive)));
    return hives.entrySet().stream()
        .map(
            e ->
                e.getValue().size() == byHive.size()
                    ? e.getKey()
                    : names(e.getValue()) + ": " + e.getKey())
        .toList();
  }

  /** Names of hives; of very many the first few, and how many more. */
  private static String names(List<String> hives) {
    return hives.size() <= MOST_NAMED
        ? String.join(", ", hives)
        : String.join(", ", hives.subList(0, FEW_NAMED))
            + " and "
            + (hives.size() - FEW_NAMED)
            + " more";
  }
}
