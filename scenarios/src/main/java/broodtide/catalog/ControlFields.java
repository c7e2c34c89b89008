package broodtide.catalog;

import broodtide.control.HazardSpread;
import broodtide.control.Miticide;
import broodtide.control.WarmthResponse;
import broodtide.forms.ChoiceForm;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.WholeForm;
import broodtide.measure.OutOfRange;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.List;

/** Fields that controls of studies and controls of the library share. */
public final class ControlFields {
  /** Days that one application acts. */
  public static final Field<Integer> DAYS =
      Field.required("days", new WholeForm(1, 120, "days"), "how long one application acts");

  /** Hazard of mites on bees, 1/day. */
  public static final Field<Double> ON_BEES =
      Field.required(
          "onBees", NumberForm.of(0, 20, "1/day"), "daily hazard of mites on adult bees");

  /** Hazard of mites in capped cells, 1/day. */
  public static final Field<Double> IN_CELLS =
      Field.required(
          "inCells", NumberForm.of(0, 20, "1/day"), "daily hazard of mites in capped cells");

  /** Extra deaths of adult bees, 1/day. */
  public static final Field<Double> BEE_COST =
      Field.optional(
          "beeCost", NumberForm.of(0, 1, "1/day"), 0.0, "extra daily death of adult bees");

  /** Share of the brood due for capping that is lost. */
  public static final Field<Double> BROOD_COST =
      Field.optional(
          "broodCost", NumberForm.share(1), 0.0, "share of the brood due for capping that is lost");

  /** Lowest daily high at which a miticide may be used, degrees Celsius. */
  public static final Field<Double> COOLEST =
      Field.required(
          "coolest",
          NumberForm.of(-40, 60, "degrees Celsius"),
          "lowest daily high at which it may be used");

  static final Field<Double> WARMEST =
      Field.required(
          "warmest",
          NumberForm.of(-40, 60, "degrees Celsius"),
          "highest daily high at which it may be used, not below coolest");
  static final Field<Miticide.SupersRule> SUPERS =
      Field.optional(
          "supers",
          ChoiceForm.of(List.of(Miticide.SupersRule.values()), Enum::name),
          Miticide.SupersRule.OFF,
          "the usual rule about honey supers: OFF, not while honey for harvest is on the hive;"
              + " LABEL_DECIDES, labels in some countries allow it");

  private static final Field<Double> IDLE =
      Field.required(
          "idle",
          NumberForm.of(-100, 60, "degrees Celsius"),
          "daily high up to which it does nothing");
  private static final Field<Double> FULL =
      Field.required(
          "full",
          NumberForm.of(-100, 60, "degrees Celsius"),
          "daily high from which it acts in full, above idle");
  private static final Field<Double> HARMFUL =
      Field.optional(
          "harmful",
          NumberForm.of(-100, 100, "degrees Celsius"),
          WarmthResponse.STEADY.harmful(),
          "daily high above which it costs more bees and brood, twice as many every 3.5 degrees");
  private static final Field<WarmthResponse> WARMTH =
      Field.optional(
          "warmth",
          new ObjectForm<>(
              "warmth",
              "how a miticide that evaporates hangs on the daily high",
              List.of(IDLE, FULL, HARMFUL),
              in -> new WarmthResponse(in.need(IDLE), in.need(FULL), in.need(HARMFUL)),
              (w, out) -> {
                out.put(IDLE, w.idle());
                out.put(FULL, w.full());
                out.put(HARMFUL, w.harmful());
              }),
          WarmthResponse.STEADY,
          "how its action hangs on the warmth of the day; it does not when left out");

  private static final Field<Double> TRIALS =
      Field.required(
          "trials",
          NumberForm.of(0, 5, "1"),
          "between trials, standard deviation of the logarithm; shared by colonies treated"
              + " together");
  private static final Field<Double> COLONIES =
      Field.required(
          "colonies", NumberForm.of(0, 5, "1"), "between the colonies of one trial, likewise");
  private static final Field<HazardSpread> SPREAD =
      Field.optional(
          "spread",
          new ObjectForm<>(
              "spread",
              "how far the hazards of a miticide differ from case to case",
              List.of(TRIALS, COLONIES),
              in -> new HazardSpread(in.need(TRIALS), in.need(COLONIES)),
              (spread, out) -> {
                out.put(TRIALS, spread.trials());
                out.put(COLONIES, spread.colonies());
              }),
          HazardSpread.USUAL,
          "how far its hazards differ from case to case");

  /** How often a miticide is given in one course. */
  public static final Field<Integer> APPLICATIONS =
      Field.optional(
          "applications", new WholeForm(1, 20, "applications"), 1, "how often it is given");

  /** Days from one application to the next; {@link #every} reads it. */
  public static final Field<Integer> EVERY =
      Field.optional(
          "every",
          new WholeForm(1, 120, "days"),
          "days from one application to the next, at least the days that one acts; as many when"
              + " left out");

  /** Share of the drone brood that each cut takes. */
  public static final Field<Double> TAKEN =
      Field.required("taken", NumberForm.share(1), "share of the drone brood that each cut takes");

  /** Share of eggs laid in drone cells while drone comb is in. */
  public static final Field<Double> DRONE_SHARE =
      Field.required(
          "droneShare",
          NumberForm.share(0.5),
          "share of eggs laid in drone cells while the comb is in");

  /** Share of the adult bees that a split moves away. */
  public static final Field<Double> BEES_LEAVING =
      Field.required("beesLeaving", NumberForm.share(0.95), "share of the adult bees moved away");

  /** Share of the brood that a split moves away. */
  public static final Field<Double> BROOD_LEAVING =
      Field.required("broodLeaving", NumberForm.share(1), "share of the brood moved away");

  /** The day of a split or a new queen. */
  static final Field<LocalDate> ON = Field.required("on", DateForm.DATE, "the day");

  /** Days until eggs are laid again. */
  public static final Field<Integer> WITHOUT_LAYING =
      Field.required(
          "daysWithoutLaying",
          new WholeForm(0, 60, "days"),
          "days until eggs are laid again in the part that is followed");

  /** The stock's hygiene, as {@link StockTraits} has it. */
  public static final Field<Double> HYGIENE = Field.of(StockTraits.class, "hygiene");

  /** The mites' vigour, as {@link StockTraits} has it. */
  public static final Field<Double> VIGOUR = Field.of(StockTraits.class, "vigour");

  /** The fields of a miticide but for its name. */
  public static final List<Field<?>> SUBSTANCE =
      List.of(
          DAYS,
          ON_BEES,
          IN_CELLS,
          BEE_COST,
          BROOD_COST,
          COOLEST,
          WARMEST,
          SUPERS,
          APPLICATIONS,
          EVERY,
          WARMTH,
          SPREAD);

  private ControlFields() {}

  /** Which of several it is, counted from 0: {@code , 1 of 2}; nothing where there is one. */
  static String count(int index, int all) {
    return all > 1 ? ", " + (index + 1) + " of " + all : "";
  }

  /** A deed after which no eggs are laid for some days, and the day on which to look for them. */
  static List<HiveVisit> withoutLaying(LocalDate from, String deed, int days) {
    HiveVisit first = new HiveVisit(from, deed);
    return days == 0
        ? List.of(first)
        : List.of(first, new HiveVisit(from.plusDays(days), "look for eggs from this day on"));
  }

  /**
   * {@return days from one application to the next: as given, else the days that one acts}
   *
   * @param in the fields as they were read
   * @throws OutOfRange when the next application would begin while one still acts
   */
  public static int every(Fields in) {
    int days = in.need(DAYS);
    int every = in.given(EVERY) ? in.need(EVERY) : days;
    if (in.need(APPLICATIONS) > 1 && every < days) {
      throw new OutOfRange(
          "every", "" + every, days + " to 120 (days): one application acts for " + days + " days");
    }
    return every;
  }

  /**
   * {@return a miticide from its fields}
   *
   * @param name its name
   * @param in the fields as they were read
   * @throws OutOfRange when values do not go together
   */
  public static Miticide miticide(String name, Fields in) {
    return new Miticide(
        name,
        in.need(DAYS),
        in.need(ON_BEES),
        in.need(IN_CELLS),
        in.need(BEE_COST),
        in.need(BROOD_COST),
        in.need(COOLEST),
        in.need(WARMEST),
        in.need(SUPERS),
        in.need(WARMTH),
        in.need(SPREAD));
  }

  /**
   * Writes a miticide and how it is given, the other way round of {@link #miticide}.
   *
   * @param m the miticide
   * @param applications how often it is given
   * @param every days from one application to the next
   * @param out takes the fields
   */
  public static void spell(Miticide m, int applications, int every, ObjectForm.Written out) {
    out.put(DAYS, m.days());
    out.put(ON_BEES, m.onBees());
    out.put(IN_CELLS, m.inCells());
    out.put(BEE_COST, m.beeCost());
    out.put(BROOD_COST, m.broodCost());
    out.put(COOLEST, m.coolest());
    out.put(WARMEST, m.warmest());
    out.put(SUPERS, m.supers());
    out.put(APPLICATIONS, applications);
    if (every != m.days()) {
      out.put(EVERY, every);
    }
    if (!m.warmth().equals(WarmthResponse.STEADY)) {
      out.put(WARMTH, m.warmth());
    }
    if (!m.spread().equals(HazardSpread.USUAL)) {
      out.put(SPREAD, m.spread());
    }
  }
}
