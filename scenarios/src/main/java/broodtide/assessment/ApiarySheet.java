package broodtide.assessment;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An apiary on one sheet: a row for each hive, the most urgent first, and how many hives are over
 * the treatment threshold today.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param rows one for each hive by urgency, see {@link HiveRow}; all are decided on one day and
 *     held to one set of thresholds
 * @param over how many hives are over the treatment threshold today; empty without a threshold
 */
public record ApiarySheet(List<HiveRow> rows, Optional<ApiaryCount> over) {
  /**
   * {@return the sheet of an apiary}
   *
   * @param hives at least one, in any order
   */
  public static ApiarySheet of(Collection<HiveRow> hives) {
    List<HiveChance> over = hives.stream().flatMap(row -> row.over().stream()).toList();
    return new ApiarySheet(
        hives.stream().sorted(HiveRow.BY_URGENCY).toList(),
        over.size() == hives.size() ? Optional.of(ApiaryCount.of(over)) : Optional.empty());
  }

  /** Copies the list. */
  public ApiarySheet {
    rows = List.copyOf(rows);
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("a sheet has no hives; give it at least one");
    }
  }

  /** {@return the decision date} */
  public LocalDate date() {
    return first().date();
  }

  /** {@return the day that is judged} */
  public LocalDate judgedOn() {
    return rows.get(0).judgedOn();
  }

  /** {@return the treatment threshold on the decision date; empty when there is none} */
  public OptionalDouble threshold() {
    return first().threshold();
  }

  /** {@return whether plans were laid} */
  public boolean plansLaid() {
    return first().ranking().isPresent();
  }

  /** {@return the plans that are best or tied with the best, hive by hive} */
  public List<Plan> named() {
    return rows.stream().flatMap(row -> row.decision().named()).toList();
  }

  /** {@return whether winter losses are known of any hive} */
  public boolean knowsWinterLoss() {
    return rows.stream().anyMatch(row -> row.decision().knowsWinterLoss());
  }

  /**
   * {@return the plans that are best or tied with the best for some hive, each with its first day;
   * the best of most hives first, waiting left out}
   */
  public Map<String, LocalDate> plans() {
    Map<String, Integer> times = new LinkedHashMap<>();
    Map<String, LocalDate> days = new LinkedHashMap<>();
    for (HiveRow row : rows) {
      name(row.decision().best(), rows.size(), times, days);
      row.decision()
          .ranking()
          .ifPresent(ranking -> ranking.tied().forEach(plan -> name(plan, 1, times, days)));
    }
    Map<String, LocalDate> out = new LinkedHashMap<>();
    times.entrySet().stream()
        .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
        .forEach(
            e -> Optional.ofNullable(days.get(e.getKey())).ifPresent(d -> out.put(e.getKey(), d)));
    return out;
  }

  /**
   * {@return one plan for the whole apiary, given to no hive, to those that are probably over the
   * threshold today, and to all; empty where losses are not known or no plan does anything}
   *
   * @param wanted the plan; where no hive can carry it out, or none is named, the one that is best
   *     for most hives
   */
  public List<ApiaryPlan> together(Optional<String> wanted) {
    Optional<String> plan =
        wanted
            .filter(name -> rows.stream().anyMatch(row -> row.lost().containsKey(name)))
            .or(() -> plans().keySet().stream().findFirst());
    if (plan.isEmpty()
        || !rows.stream()
            .allMatch(r -> r.lost().containsKey(r.decision().waiting().plan().name()))) {
      return List.of();
    }
    List<ApiaryPlan> out = new ArrayList<>();
    out.add(ApiaryPlan.of(ApiaryPlan.Whom.NONE, plan.get(), rows));
    long over = rows.stream().filter(HiveRow::probablyOver).count();
    if (over > 0 && over < rows.size()) {
      out.add(ApiaryPlan.of(ApiaryPlan.Whom.THOSE_OVER, plan.get(), rows));
    }
    out.add(ApiaryPlan.of(ApiaryPlan.Whom.ALL, plan.get(), rows));
    return out;
  }

  /** {@return hives for which a wash before the decision is worth its trouble, the best first} */
  public List<HiveRow> washNext() {
    return rows.stream()
        .filter(row -> row.wash().map(WashGain::worthIt).orElse(false))
        .sorted(Comparator.comparingDouble(ApiarySheet::gain).reversed())
        .toList();
  }

  /** {@return whether it is known of any hive what a wash is worth} */
  public boolean knowsWashes() {
    return rows.stream().anyMatch(row -> row.wash().isPresent());
  }

  private static double gain(HiveRow row) {
    return row.wash().map(WashGain::gain).orElse(0.0);
  }

  private static void name(
      PlanSummary plan, int weight, Map<String, Integer> times, Map<String, LocalDate> days) {
    plan.from()
        .ifPresent(
            day -> {
              times.merge(plan.plan().name(), weight, Integer::sum);
              days.putIfAbsent(plan.plan().name(), day);
            });
  }

  private Decision first() {
    return rows.get(0).decision();
  }
}
