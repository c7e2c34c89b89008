package broodtide.catalog;

import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.measure.Tag;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;

/**
 * A control with its usual values, before it is placed in the calendar.
 *
 * @param name short name, for example {@code oxalic-dribble}
 * @param title one line for people
 * @param action what it does
 * @param efficacy what was seen of it, if anything was
 * @param notes what to know about it
 * @param cautions what to beware of
 */
public record ControlTemplate(
    String name,
    String title,
    Action action,
    Optional<Efficacy> efficacy,
    List<String> notes,
    List<String> cautions) {
  /** Copies the lists. */
  public ControlTemplate {
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
  }

  /**
   * The control, begun on a day.
   *
   * @param start first day of the control
   * @return the control on its days
   */
  public Control at(LocalDate start) {
    return action.at(title, start);
  }

  /** What a control does, counted in days from its start. */
  public sealed interface Action permits Treatment, DroneComb, Caging, Division, NewQueen {
    /**
     * Places it in the calendar.
     *
     * @param name what people call it
     * @param start first day
     * @return the control on its days
     */
    Control at(String name, LocalDate start);
  }

  /**
   * A miticide.
   *
   * @param substance the active substance in words
   * @param miticide how it acts
   * @param applications how often it is given
   * @param every days from one application to the next
   */
  public record Treatment(String substance, Miticide miticide, int applications, int every)
      implements Action {
    @Override
    public MiticideCourse at(String name, LocalDate start) {
      return new MiticideCourse(name, miticide, start, applications, every);
    }

    /**
     * {@return the same given at another rhythm}
     *
     * @param times how often, 1 to 20
     * @param apart days from one to the next
     */
    public Treatment given(int times, int apart) {
      return new Treatment(substance, miticide, times, apart);
    }
  }

  /**
   * Drone comb cut out.
   *
   * @param cutsAfter days from the day the comb goes in to each cut, rising
   * @param taken share of the drone brood that each cut takes
   * @param droneShare share of eggs laid in drone cells while the comb is in
   */
  public record DroneComb(List<Integer> cutsAfter, double taken, double droneShare)
      implements Action {
    /** Copies the list. */
    public DroneComb {
      cutsAfter = List.copyOf(cutsAfter);
    }

    @Override
    public DroneCombRemoval at(String name, LocalDate start) {
      List<LocalDate> cuts = cutsAfter.stream().map(start::plusDays).toList();
      return new DroneCombRemoval(name, start, cuts, taken, droneShare);
    }
  }

  /**
   * The queen caged.
   *
   * @param days days in the cage
   */
  public record Caging(int days) implements Action {
    @Override
    public QueenCaging at(String name, LocalDate start) {
      return new QueenCaging(name, start, start.plusDays(days - 1L));
    }
  }

  /**
   * Bees and brood moved away.
   *
   * @param beesLeaving share of the adult bees
   * @param broodLeaving share of the brood
   * @param daysWithoutLaying days until eggs are laid again in the part that is followed
   */
  public record Division(double beesLeaving, double broodLeaving, int daysWithoutLaying)
      implements Action {
    @Override
    public Split at(String name, LocalDate start) {
      return new Split(name, start, beesLeaving, broodLeaving, daysWithoutLaying);
    }
  }

  /**
   * A new queen.
   *
   * @param stock traits of her stock
   * @param daysWithoutLaying days until she lays
   */
  public record NewQueen(StockTraits stock, int daysWithoutLaying) implements Action {
    @Override
    public Requeening at(String name, LocalDate start) {
      return new Requeening(name, start, stock, daysWithoutLaying);
    }
  }

  /**
   * What a trial or practice saw of a control.
   *
   * @param share share of mites that it removed, 0 to 1
   * @param setting where and how that was measured
   * @param tag how the figure is known
   * @param source where it comes from
   * @param trials the trials behind it, each with its source; none where it is one figure alone
   */
  public record Efficacy(
      double share, Setting setting, Tag tag, String source, List<EfficacyTrial> trials) {
    /** Copies the list. */
    public Efficacy {
      trials = List.copyOf(trials);
    }

    /** {@return what the trials say together; empty where none counts} */
    public Optional<PooledEfficacy> pooled() {
      return trials.stream().anyMatch(EfficacyTrial::pooled)
          ? Optional.of(PooledEfficacy.of(trials))
          : Optional.empty();
    }

    /** {@return how far trials differ, in logits, as they show or as is usual} */
    public double between() {
      return pooled().map(PooledEfficacy::between).orElse(PooledEfficacy.USUAL_BETWEEN);
    }
  }

  /**
   * Where and how an efficacy was measured.
   *
   * @param climate name of the climate nearest to the place
   * @param date first day of the treatment
   * @param broodless whether the colonies had no brood
   * @param measuredAfter days from then to the measurement
   * @param against what the remaining mites were compared with
   */
  public record Setting(
      String climate, MonthDay date, boolean broodless, int measuredAfter, Against against) {}

  /** What remaining mites are compared with. */
  public enum Against {
    /** Mites of untreated colonies on the same day. */
    UNTREATED,
    /** Mites of the same colony at the start. */
    START,
    /**
     * Mites killed by the treatment together with those that a follow-up found left: killed /
     * (killed + left), the usual reckoning of trials that count fallen mites.
     */
    FOLLOWUP
  }
}
