package broodtide.catalog;

import broodtide.control.Control;
import broodtide.measure.Tag;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;

/**
 * A control with its usual values, before it is placed in the calendar.
 *
 * @param name short name, for example {@code oxalic-dribble}
 * @param title one line for people
 * @param substance the active substance in words, when it is a miticide
 * @param usual the control with its usual values, begun on {@link #FIRST_DAY}
 * @param efficacy what was seen of it, if anything was
 * @param handling what to mind when it is given
 * @param notes what to know about it
 * @param cautions cautions
 */
public record ControlTemplate(
    String name,
    String title,
    Optional<String> substance,
    Control usual,
    Optional<Efficacy> efficacy,
    Handling handling,
    List<String> notes,
    List<String> cautions) {
  /** The day on which controls of the library begin until they are placed in the calendar. */
  public static final LocalDate FIRST_DAY = LocalDate.EPOCH;

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
    return usual.named(title).startingOn(start);
  }

  /**
   * What a trial or practice saw of a control.
   *
   * @param share share of mites that it removed, 0 to 1
   * @param setting where and how that was measured
   * @param tag how the figure is known
   * @param source where it comes from
   * @param trials the trials behind it, each with its source; none where it is one figure alone
   * @param resistant what it does where mites resist it, as far as that is known
   */
  public record Efficacy(
      double share,
      Setting setting,
      Tag tag,
      String source,
      List<EfficacyTrial> trials,
      Optional<Resistance> resistant) {
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

    /**
     * {@return the share of one colony in one trial, so many standard deviations from the middle}
     *
     * @param deviations of trials and colonies together, any number
     */
    public double share(double deviations) {
      double spread = Math.hypot(between(), PooledEfficacy.COLONIES);
      return 1 / (1 + (1 / share - 1) * Math.exp(-deviations * spread));
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
