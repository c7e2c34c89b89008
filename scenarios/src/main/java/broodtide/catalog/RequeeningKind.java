package broodtide.catalog;

import static broodtide.catalog.ControlFields.HYGIENE;
import static broodtide.catalog.ControlFields.ON;
import static broodtide.catalog.ControlFields.VIGOUR;
import static broodtide.catalog.ControlFields.WITHOUT_LAYING;

import broodtide.control.Requeening;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ObjectForm;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.List;

/** A new queen of other stock. */
final class RequeeningKind extends ControlKind<Requeening> {
  private static final Field<String> NAME = name("new queen");

  RequeeningKind() {
    super("requeening", Requeening.class, "a new queen of other stock");
  }

  @Override
  List<Field<?>> datedFields() {
    return List.of(NAME, ON, HYGIENE, VIGOUR, WITHOUT_LAYING);
  }

  @Override
  Requeening dated(Fields in) {
    return requeening(in.need(NAME), in.need(ON), in);
  }

  @Override
  void writeDated(Requeening queen, ObjectForm.Written out) {
    out.put(NAME, queen.name());
    out.put(ON, queen.from());
    writeUsual(queen, out);
  }

  @Override
  List<Field<?>> usualFields() {
    return List.of(HYGIENE, VIGOUR, WITHOUT_LAYING);
  }

  @Override
  Requeening usual(String name, String title, LocalDate start, Fields in) {
    return requeening(title, start, in);
  }

  @Override
  void writeUsual(Requeening queen, ObjectForm.Written out) {
    out.put(HYGIENE, queen.stock().hygiene());
    out.put(VIGOUR, queen.stock().vigour());
    out.put(WITHOUT_LAYING, queen.daysWithoutLaying());
  }

  @Override
  List<HiveVisit> hands(Requeening queen, Handling handling) {
    return ControlFields.withoutLaying(
        queen.from(), "old queen out, new queen in", queen.daysWithoutLaying());
  }

  private static Requeening requeening(String name, LocalDate on, Fields in) {
    return new Requeening(
        name, on, new StockTraits(in.need(HYGIENE), in.need(VIGOUR)), in.need(WITHOUT_LAYING));
  }
}
