package broodtide.engine;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;

/** One colony's season, every {@link Quantity} on every day. */
public final class Trajectory {
  private final LocalDate start;
  private final Map<Quantity, double[]> series;
  private final MiteLedger[] ledgers;

  private Trajectory(LocalDate start, Map<Quantity, double[]> series, MiteLedger[] ledgers) {
    this.start = start;
    this.series = series;
    this.ledgers = ledgers;
  }

  /** {@return the first day} */
  public LocalDate start() {
    return start;
  }

  /** {@return days that ran; there is one state more than that} */
  public int days() {
    return ledgers.length - 1;
  }

  /**
   * {@return a quantity at the start of a day}
   *
   * @param quantity what to look at
   * @param day a day of the season, its end included
   * @throws IllegalArgumentException when the day lies outside the season
   */
  public double at(Quantity quantity, LocalDate day) {
    return series(quantity)[index(day)];
  }

  /**
   * {@return a copy of a quantity's values, one per day from the start}
   *
   * @param quantity what to look at
   */
  public double[] of(Quantity quantity) {
    return series(quantity).clone();
  }

  /**
   * {@return the ledger at the start of a day, by days since the start}
   *
   * @param day days since the start, 0 to {@link #days()}
   */
  public MiteLedger ledger(int day) {
    return ledgers[day];
  }

  /** {@return the ledger of the whole season} */
  public MiteLedger ledger() {
    return ledgers[days()];
  }

  private double[] series(Quantity quantity) {
    double[] values = series.get(quantity);
    if (values == null) {
      throw new IllegalStateException(quantity + " was not kept");
    }
    return values;
  }

  private int index(LocalDate day) {
    long i = day.toEpochDay() - start.toEpochDay();
    if (i < 0 || i > days()) {
      throw new IllegalArgumentException(
          day + " lies outside " + start + " to " + start.plusDays(days()));
    }
    return Math.toIntExact(i);
  }

  /** Keeps lane 0 of whatever it is shown. */
  public static final class Recorder implements DayObserver {
    private final LocalDate start;
    private final Map<Quantity, double[]> series = new EnumMap<>(Quantity.class);
    private final MiteLedger[] ledgers;

    /**
     * A recorder without any day yet.
     *
     * @param start first day of the run
     * @param days days of the run, 0 or more; it is shown one state more than that
     */
    public Recorder(LocalDate start, int days) {
      this.start = start;
      ledgers = new MiteLedger[days + 1];
      for (Quantity q : Quantity.values()) {
        series.put(q, new double[days + 1]);
      }
    }

    @Override
    public void see(int day, ColonyView view) {
      series.forEach((quantity, values) -> values[day] = quantity.of(view, 0));
      ledgers[day] = view.ledger(0);
    }

    /** {@return the season that was recorded; to be asked for after the last day} */
    public Trajectory trajectory() {
      return new Trajectory(start, series, ledgers);
    }
  }
}
