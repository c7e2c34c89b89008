package broodtide.results;

import broodtide.assessment.Caution;
import broodtide.assessment.ControlCautions;
import broodtide.assessment.HiveRow;
import broodtide.assessment.QuantileSummary;
import broodtide.assessment.WashGain;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The columns of the sheet of an apiary, one row for each hive. Infestations are mites per 100
 * adult bees, chances and losses run from 0 to 1. Every table of the sheet has these columns,
 * whatever it is written with.
 *
 * @since 0.2.0
 */
public final class SheetColumns {
  /** What the cells of a column are. */
  public enum Kind {
    /** A {@link String}. */
    TEXT,
    /** A {@link LocalDate}. */
    DAY,
    /** An {@link Integer}. */
    COUNT,
    /** A {@link Double}. */
    NUMBER
  }

  /**
   * A column.
   *
   * @param name its name
   * @param kind what its cells are
   */
  public record Column(String name, Kind kind) {}

  /** The columns, in their order. */
  public static final List<Column> ALL =
      List.of(
          new Column("colony", Kind.TEXT),
          new Column("last_count", Kind.DAY),
          new Column("mites", Kind.COUNT),
          new Column("bees", Kind.COUNT),
          new Column("counted_per_100", Kind.NUMBER),
          new Column("decision_date", Kind.DAY),
          new Column("infestation_q05", Kind.NUMBER),
          new Column("infestation_median", Kind.NUMBER),
          new Column("infestation_q95", Kind.NUMBER),
          new Column("over_threshold_today", Kind.NUMBER),
          new Column("judged_on", Kind.DAY),
          new Column("judged_q05", Kind.NUMBER),
          new Column("judged_median", Kind.NUMBER),
          new Column("judged_q95", Kind.NUMBER),
          new Column("winter_loss", Kind.NUMBER),
          new Column("best_plan", Kind.TEXT),
          new Column("from", Kind.DAY),
          new Column("winter_loss_with_best", Kind.NUMBER),
          new Column("gain", Kind.NUMBER),
          new Column("tied", Kind.TEXT),
          new Column("acid_caution", Kind.TEXT),
          new Column("next_count", Kind.TEXT),
          new Column("next_count_by", Kind.DAY),
          new Column("wash_gain", Kind.NUMBER),
          new Column("wash_changes_plan", Kind.NUMBER));

  private SheetColumns() {}

  /** {@return the names of the columns, in their order} */
  public static List<String> names() {
    return ALL.stream().map(Column::name).toList();
  }

  /**
   * {@return the cells of a hive, one for each column; null where a cell does not apply}
   *
   * @param row the hive
   */
  public static List<@Nullable Object> cells(HiveRow row) {
    boolean plans = row.decision().ranking().isPresent();
    List<@Nullable Object> cells = new ArrayList<>();
    cells.add(row.hive());
    cells.addAll(count(row));
    cells.add(row.decision().date());
    band(row.infestation(), cells);
    cells.add(number(row.decision().overThresholdToday()));
    cells.add(row.judgedOn());
    band(row.judged(), cells);
    cells.add(number(row.winterLoss()));
    cells.add(plans ? row.decision().best().plan().name() : null);
    cells.add(plans ? row.decision().best().from().orElse(null) : null);
    cells.add(plans ? number(row.winterLossWithBest()) : null);
    cells.add(number(row.gain()));
    cells.add(String.join("; ", row.decision().tied()));
    cells.add(ControlCautions.acid(row.decision().named().toList()) ? Caution.ACID : null);
    cells.add(row.nextCount().map(next -> next.reason().id()).orElse(null));
    cells.add(row.nextCount().map(next -> next.by()).orElse(null));
    cells.add(row.wash().map(WashGain::gain).orElse(null));
    cells.add(row.wash().map(WashGain::changes).orElse(null));
    return cells;
  }

  /** The newest count; a board has neither bees nor mites per 100 of them. */
  private static List<@Nullable Object> count(HiveRow row) {
    return row.lastBoard()
        .map(board -> Arrays.<@Nullable Object>asList(board.date(), board.mites(), null, null))
        .or(() -> row.lastCount().map(SheetColumns::count))
        .orElse(Arrays.asList(new Object[4]));
  }

  private static List<@Nullable Object> count(Wash w) {
    return Arrays.asList(
        w.date(),
        w.mites(),
        w.bees().isPresent() ? Integer.valueOf(w.bees().getAsInt()) : null,
        w.perHundred());
  }

  private static void band(QuantileSummary s, List<@Nullable Object> cells) {
    cells.add(s.q05());
    cells.add(s.median());
    cells.add(s.q95());
  }

  private static @Nullable Double number(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
