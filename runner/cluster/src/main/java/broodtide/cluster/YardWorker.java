package broodtide.cluster;

import broodtide.assessment.ApiaryCount;
import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiaryPlan.Whom;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.ControlCautions;
import broodtide.assessment.HiveAnswer;
import broodtide.assessment.HiveChance;
import broodtide.assessment.HiveRow;
import broodtide.assessment.PlaceCases;
import broodtide.assessment.RegionCount;
import broodtide.control.Plan;
import broodtide.decision.NextWash;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
import broodtide.measure.RefusedException;
import broodtide.results.SheetColumns;
import broodtide.study.WashFile;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Works out yards, one thread each.
 *
 * @param question what is asked
 * @param now the day of decision
 * @param newestBoard the newest board of all colonies; null without one or with a day that was
 *     named
 * @param work works out one hive
 */
record YardWorker(
    Question question, LocalDate now, @Nullable LocalDate newestBoard, HiveWork work)
    implements Serializable {
  /** The core's own. */
  static final HiveWork CORE =
      (c, plans, question, banks, workers) -> {
        HiveAnswer answer =
            HiveAnswer.of(c, plans, !question.compare(), question.settings(), banks, workers);
        return answer.row(NextWash.of(answer.comparison()));
      };

  /** Hives that began alike and were treated alike, which share seasons, stand together. */
  private static final Comparator<Hive> SHARING_TOGETHER =
      Comparator.comparing(Hive::first).thenComparing(ColonyRows::treatments);

  /**
   * Works out yards one by one.
   *
   * @param yards in their order, so that those that share seasons stand together
   * @param banks seasons that hives share
   */
  Iterator<YardResult> each(Iterator<Yard> yards, SeasonBanks banks) {
    Map<String, PlaceCases> places = new HashMap<>();
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return yards.hasNext();
      }

      @Override
      public YardResult next() {
        Yard yard = yards.next();
        PlaceCases place =
            places.computeIfAbsent(yard.climate(), climate -> question.cases(climate, now));
        return of(yard, place, banks);
      }
    };
  }

  private YardResult of(Yard yard, PlaceCases place, SeasonBanks banks) {
    List<HiveRow> rows = new ArrayList<>();
    List<RejectedRow> rejected = new ArrayList<>();
    int counts = 0;
    try (Workers alone = new Workers(1)) {
      for (Hive hive : yard.hives().stream().sorted(SHARING_TOGETHER).toList()) {
        try {
          ColonyCase c = colony(hive, place);
          List<Plan> plans = question.plans(c);
          rows.add(work.of(c, plans, question, banks, alone));
          counts += hive.counts().size();
        } catch (RefusedException e) {
          rejected.addAll(hive.rejected("colony", hive.colony(), e.reason()));
        } catch (RuntimeException e) {
          throw new YardFailed(hive.colony(), hive.yard(), e);
        }
      }
    }
    rows.sort(Comparator.comparing(HiveRow::hive));
    return result(yard, rows, rejected, counts);
  }

  private ColonyCase colony(Hive hive, PlaceCases place) {
    WashFile washes = ColonyRows.washes(hive, question.today());
    ColonyCase c =
        place.of(
            hive.colony(),
            washes.byColony().getOrDefault(hive.colony(), List.of()),
            washes.boards(),
            ColonyRows.given(hive, question.today()));
    ColonyCase counted =
        ColonyCases.withBoards(c, washes.boards(), Optional.ofNullable(newestBoard));
    return question.believed(counted.in(hive.yard()));
  }

  private static YardResult result(
      Yard yard, List<HiveRow> rows, List<RejectedRow> rejected, int counts) {
    List<YardResult.Line> lines = new ArrayList<>();
    TreeSet<String> plans = new TreeSet<>();
    List<HiveChance> over = new ArrayList<>();
    String waiting = "";
    boolean acid = false;
    for (HiveRow row : rows) {
      Object[] cells = SheetColumns.cells(row).toArray();
      lines.add(new YardResult.Line(row.urgency(), TableRow.of(cells)));
      plans.addAll(row.lost().keySet());
      row.over().ifPresent(over::add);
      waiting = row.decision().waiting().plan().name();
      acid |= ControlCautions.acid(row.decision().named().toList());
    }
    Map<String, RegionCount> lost = new TreeMap<>();
    for (String plan : plans) {
      lost.put(plan, RegionCount.of(ApiaryPlan.of(Whom.ALL, plan, rows).lost()));
    }
    RegionCount counted = over.size() == rows.size() ? RegionCount.of(ApiaryCount.of(over)) : null;
    return new YardResult(
        yard.key(), yard.region(), lines, counted, lost, waiting, acid, rejected, counts);
  }
}
