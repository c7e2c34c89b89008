package broodtide.catalog;

import broodtide.control.QueenCaging;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ObjectForm;
import broodtide.forms.WholeForm;
import java.time.LocalDate;
import java.util.List;

/** The queen caged so that no eggs are laid. */
final class QueenCagingKind extends ControlKind<QueenCaging> {
  private static final Field<String> NAME = name("caged queen");
  private static final Field<LocalDate> FROM =
      Field.required("from", DateForm.DATE, "first day in the cage");
  private static final Field<LocalDate> TO =
      Field.required("to", DateForm.DATE, "last day in the cage, at most 120 days later");
  private static final Field<Integer> DAYS =
      Field.required("days", new WholeForm(1, 121, "days"), "days in the cage");

  QueenCagingKind() {
    super("queen-caging", QueenCaging.class, "the queen caged so that no eggs are laid");
  }

  @Override
  List<Field<?>> datedFields() {
    return List.of(NAME, FROM, TO);
  }

  @Override
  QueenCaging dated(Fields in) {
    return new QueenCaging(in.need(NAME), in.need(FROM), in.need(TO));
  }

  @Override
  void writeDated(QueenCaging cage, ObjectForm.Written out) {
    out.put(NAME, cage.name());
    out.put(FROM, cage.from());
    out.put(TO, cage.to());
  }

  @Override
  List<Field<?>> usualFields() {
    return List.of(DAYS);
  }

  @Override
  QueenCaging usual(String name, String title, LocalDate start, Fields in) {
    return new QueenCaging(title, start, start.plusDays(in.need(DAYS) - 1L));
  }

  @Override
  void writeUsual(QueenCaging cage, ObjectForm.Written out) {
    out.put(DAYS, cage.daysWithoutLaying());
  }

  /** She is freed on the day after her last day in the cage, from which she lays again. */
  @Override
  List<HiveVisit> hands(QueenCaging cage, Handling handling) {
    return List.of(
        new HiveVisit(cage.from(), "cage the queen"),
        new HiveVisit(cage.to().plusDays(1), "release the queen"));
  }
}
