package broodtide.catalog;

import broodtide.control.TrappingComb;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.WholeForm;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.List;

/** The queen caged, then kept on one comb that is taken out capped. */
final class TrappingCombKind extends ControlKind<TrappingComb> {
  private static final Field<String> NAME = name("trapping comb");
  private static final Field<LocalDate> FROM =
      Field.required("from", DateForm.DATE, "first day in the cage");
  private static final Field<Integer> CAGED =
      Field.required("cagedDays", new WholeForm(15, 60, "days"), "days without laying");
  private static final Field<Integer> TRAPPING =
      Field.required(
          "trappingDays",
          new WholeForm(9, 20, "days"),
          "days from the first egg on the comb to the day it is taken out");
  private static final Field<Double> TAKEN =
      Field.required("taken", NumberForm.share(1), "share of the brood that goes with the comb");

  TrappingCombKind() {
    super(
        "trapping-comb",
        TrappingComb.class,
        "the queen caged, then kept on one comb that is taken out once it is capped");
  }

  @Override
  List<Field<?>> datedFields() {
    return List.of(NAME, FROM, CAGED, TRAPPING, TAKEN);
  }

  @Override
  TrappingComb dated(Fields in) {
    return comb(in.need(NAME), in.need(FROM), in);
  }

  @Override
  void writeDated(TrappingComb comb, ObjectForm.Written out) {
    out.put(NAME, comb.name());
    out.put(FROM, comb.from());
    writeUsual(comb, out);
  }

  @Override
  List<Field<?>> usualFields() {
    return List.of(CAGED, TRAPPING, TAKEN);
  }

  @Override
  TrappingComb usual(String name, String title, LocalDate start, Fields in) {
    return comb(title, start, in);
  }

  @Override
  void writeUsual(TrappingComb comb, ObjectForm.Written out) {
    out.put(CAGED, comb.cagedDays());
    out.put(TRAPPING, comb.trappingDays());
    out.put(TAKEN, comb.taken());
  }

  /** A comb without eggs traps nothing. */
  @Override
  List<Obstacle> against(TrappingComb comb, Climate climate) {
    return climate.laying().at(comb.given()) > 0
        ? List.of()
        : List.of(
            new Obstacle(
                Obstacle.Kind.NO_EGGS,
                comb.name()
                    + " from "
                    + comb.from()
                    + ": queens usually lay no eggs when the comb is given, on "
                    + comb.given()));
  }

  @Override
  List<LocalDate> marked(TrappingComb comb) {
    return List.of(comb.from(), comb.to());
  }

  @Override
  List<HiveVisit> hands(TrappingComb comb, Handling handling) {
    return List.of(
        new HiveVisit(comb.from(), "cage the queen"),
        new HiveVisit(comb.given(), "put the trapping comb in, with the queen on it"),
        new HiveVisit(comb.to(), "take the trapping comb out, release the queen"));
  }

  private static TrappingComb comb(String name, LocalDate from, Fields in) {
    return new TrappingComb(name, from, in.need(CAGED), in.need(TRAPPING), in.need(TAKEN));
  }
}
