package broodtide.catalog;

import broodtide.control.Miticide;
import broodtide.forms.ChoiceForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.WholeForm;
import broodtide.measure.OutOfRange;
import broodtide.mite.StockTraits;
import java.util.List;

/** Fields that controls of studies and controls of the library share. */
public final class ControlFields {
  public static final Field<Integer> DAYS =
      Field.required("days", new WholeForm(1, 120, "days"), "how long one application acts");
  public static final Field<Double> ON_BEES =
      Field.required(
          "onBees", NumberForm.of(0, 20, "1/day"), "daily hazard of mites that sit on bees");
  public static final Field<Double> IN_CELLS =
      Field.required(
          "inCells", NumberForm.of(0, 20, "1/day"), "daily hazard of mites under cappings");
  public static final Field<Double> BEE_COST =
      Field.optional(
          "beeCost", NumberForm.of(0, 1, "1/day"), 0.0, "extra daily death of adult bees");
  public static final Field<Double> BROOD_COST =
      Field.optional(
          "broodCost", NumberForm.share(1), 0.0, "share of the brood due for capping that is lost");
  public static final Field<Double> COOLEST =
      Field.required(
          "coolest",
          NumberForm.of(-40, 60, "degrees Celsius"),
          "lowest daily high at which it may be used");
  public static final Field<Double> WARMEST =
      Field.required(
          "warmest",
          NumberForm.of(-40, 60, "degrees Celsius"),
          "highest daily high at which it may be used, not below coolest");
  public static final Field<Miticide.SupersRule> SUPERS =
      Field.optional(
          "supers",
          ChoiceForm.of(List.of(Miticide.SupersRule.values()), Enum::name),
          Miticide.SupersRule.OFF,
          "the usual rule about honey supers: OFF, not while honey for harvest is on the hive;"
              + " LABEL_DECIDES, labels in some countries allow it");
  public static final Field<Integer> APPLICATIONS =
      Field.optional(
          "applications", new WholeForm(1, 20, "applications"), 1, "how often it is given");
  public static final Field<Integer> EVERY =
      Field.optional(
          "every",
          new WholeForm(1, 120, "days"),
          "days from one application to the next, at least the days that one acts; as many when"
              + " left out");
  public static final Field<Double> TAKEN =
      Field.required("taken", NumberForm.share(1), "share of the drone brood that each cut takes");
  public static final Field<Double> DRONE_SHARE =
      Field.required(
          "droneShare",
          NumberForm.share(0.5),
          "share of eggs laid in drone cells while the comb is in");
  public static final Field<Double> BEES_LEAVING =
      Field.required("beesLeaving", NumberForm.share(0.95), "share of the adult bees moved away");
  public static final Field<Double> BROOD_LEAVING =
      Field.required("broodLeaving", NumberForm.share(1), "share of the brood moved away");
  public static final Field<Integer> WITHOUT_LAYING =
      Field.required(
          "daysWithoutLaying",
          new WholeForm(0, 60, "days"),
          "days until eggs are laid again in the part that is followed");
  public static final Field<Double> HYGIENE = Field.of(StockTraits.class, "hygiene");
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
          EVERY);

  private ControlFields() {}

  /** Days between applications: as given, else the days that one acts. */
  static int every(Fields in) {
    int days = in.need(DAYS);
    int every = in.given(EVERY) ? in.need(EVERY) : days;
    if (in.need(APPLICATIONS) > 1 && every < days) {
      throw new OutOfRange(
          "every", "" + every, days + " to 120 (days): one application acts for " + days + " days");
    }
    return every;
  }

  static Miticide miticide(String name, Fields in) {
    return new Miticide(
        name,
        in.need(DAYS),
        in.need(ON_BEES),
        in.need(IN_CELLS),
        in.need(BEE_COST),
        in.need(BROOD_COST),
        in.need(COOLEST),
        in.need(WARMEST),
        in.need(SUPERS));
  }

  static void spell(Miticide m, int applications, int every, ObjectForm.Written out) {
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
  }
}
