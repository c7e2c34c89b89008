package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Difference;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanCheck;
import broodtide.assessment.PlanRanking;
import broodtide.assessment.QuantileSummary;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Obstacle;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Controls begun on different days, each cell judged by one outcome over the same colonies.
 *
 * @param colony the case
 * @param outcome what they are judged by
 * @param waiting the outcome of waiting
 * @param starts first days, rising, one for each column
 * @param rows one for each control
 */
@SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
public record Windows(
    ColonyCase colony, Outcome outcome, Played waiting, List<LocalDate> starts, List<Row> rows) {
  /** A day is as good as the best when it keeps this share of what the best gains. Choice. */
  private static final double AS_GOOD = 0.9;

  /** One place of the grid. */
  public sealed interface Cell permits Played, Blocked {}

  /**
   * A control that could be begun on the day.
   *
   * @param middle the outcome's middle figure, see {@link Outcome#middle}
   * @param band the outcome's band, see {@link Outcome#band}
   * @param byMember the outcome by member, whether it lives or not
   */
  @SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
  public record Played(double middle, QuantileSummary band, double[] byMember) implements Cell {}

  /**
   * A control that cannot be begun on the day.
   *
   * @param obstacle why not
   */
  public record Blocked(Obstacle obstacle) implements Cell {}

  /**
   * One control.
   *
   * @param control the control
   * @param cells one for each start
   */
  public record Row(ControlTemplate control, List<Cell> cells) {
    /** Copies the list. */
    public Row {
      cells = List.copyOf(cells);
    }

    /** {@return the first column with the lowest outcome; empty when every cell is blocked} */
    public Optional<Integer> best() {
      Optional<Integer> best = Optional.empty();
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < cells.size(); i++) {
        if (cells.get(i) instanceof Played p && p.middle() < least) {
          least = p.middle();
          best = Optional.of(i);
        }
      }
      return best;
    }

    /**
     * {@return a cell's middle figure; empty when it is blocked}
     *
     * @param column number of a start day, from 0
     */
    public Optional<Double> middle(int column) {
      return cells.get(column) instanceof Played p ? Optional.of(p.middle()) : Optional.empty();
    }
  }

  /**
   * Days in a row that are about as good as the best one among them.
   *
   * @param first first column
   * @param last last column
   */
  public record Stretch(int first, int last) {}

  /** Copies the lists. */
  public Windows {
    starts = List.copyOf(starts);
    rows = List.copyOf(rows);
  }

  /**
   * {@return the row with the lowest outcome, the first of equals; empty when every cell is
   * blocked}
   */
  public Optional<Row> best() {
    Optional<Row> best = Optional.empty();
    double least = Double.POSITIVE_INFINITY;
    for (Row row : rows) {
      double middle = row.best().flatMap(row::middle).orElse(Double.POSITIVE_INFINITY);
      if (middle < least) {
        least = middle;
        best = Optional.of(row);
      }
    }
    return best;
  }

  /**
   * {@return whether a cell is tied with the best of all cells, by the rule that plans are ranked
   * by; so is the best itself}
   *
   * @param row a row of these
   * @param column number of a start day, from 0
   */
  public boolean tied(Row row, int column) {
    return best()
        .map(b -> b.cells().get(b.best().orElseThrow()))
        .filter(
            best ->
                row.cells().get(column) instanceof Played p
                    && !PlanRanking.clearlyHigher(
                        p.byMember(), ((Played) best).byMember(), outcome.usualCost()))
        .isPresent();
  }

  /** {@return what waiting leads to: the outcome's middle figure} */
  public double ifYouWait() {
    return waiting.middle();
  }

  /**
   * {@return how far a cell of a row may stand from the row's best and still count as good: a tenth
   * of what the best gains over waiting; nothing when it gains nothing}
   *
   * @param row a row of these
   */
  public double tolerance(Row row) {
    double least = row.best().flatMap(row::middle).orElse(Double.POSITIVE_INFINITY);
    return Math.max(0, (1 - AS_GOOD) * (ifYouWait() - least));
  }

  /**
   * {@return the days around a row's best one that are about as good; empty when every cell is
   * blocked}
   *
   * @param row a row of these
   */
  public Optional<Stretch> asGood(Row row) {
    if (row.best().isEmpty()) {
      return Optional.empty();
    }
    int best = row.best().get();
    double most = row.middle(best).orElseThrow() + tolerance(row);
    int first = best;
    while (first > 0 && row.middle(first - 1).orElse(Double.POSITIVE_INFINITY) <= most) {
      first--;
    }
    int last = best;
    while (last + 1 < starts.size()
        && row.middle(last + 1).orElse(Double.POSITIVE_INFINITY) <= most) {
      last++;
    }
    return Optional.of(new Stretch(first, last));
  }

  /**
   * {@return whether a cell is open only where the label allows the control under honey supers,
   * which usually stand while it acts}
   *
   * @param row a row of these
   * @param column number of a start day, from 0
   */
  public boolean labelDecides(Row row, int column) {
    return row.cells().get(column) instanceof Played
        && PlanCheck.labelDecides(row.control().at(starts.get(column)), colony.model().climate());
  }

  /**
   * What it costs to begin later than on a day, colony by colony.
   *
   * @param row the control
   * @param column the day
   * @param days how much later
   * @return empty when that day is not in the grid or either cell is blocked
   */
  public Optional<Difference> delay(Row row, int column, int days) {
    int later = starts.indexOf(starts.get(column).plusDays(days));
    if (later < 0
        || !(row.cells().get(column) instanceof Played now)
        || !(row.cells().get(later) instanceof Played then)) {
      return Optional.empty();
    }
    return Optional.of(Difference.of(then.byMember(), now.byMember()));
  }
}
