package broodtide.catalog;

import static broodtide.catalog.ControlFields.BEES_LEAVING;
import static broodtide.catalog.ControlFields.BROOD_LEAVING;
import static broodtide.catalog.ControlFields.ON;
import static broodtide.catalog.ControlFields.WITHOUT_LAYING;

import broodtide.control.Split;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ObjectForm;
import java.time.LocalDate;
import java.util.List;

/** Bees and brood moved away. */
final class SplitKind extends ControlKind<Split> {
  private static final Field<String> NAME = name("split");

  SplitKind() {
    super(
        "split",
        Split.class,
        "bees and brood moved away; a shook swarm leaves all the brood behind");
  }

  @Override
  List<Field<?>> datedFields() {
    return List.of(NAME, ON, BEES_LEAVING, BROOD_LEAVING, WITHOUT_LAYING);
  }

  @Override
  Split dated(Fields in) {
    return split(in.need(NAME), in.need(ON), in);
  }

  @Override
  void writeDated(Split split, ObjectForm.Written out) {
    out.put(NAME, split.name());
    out.put(ON, split.from());
    writeUsual(split, out);
  }

  @Override
  List<Field<?>> usualFields() {
    return List.of(BEES_LEAVING, BROOD_LEAVING, WITHOUT_LAYING);
  }

  @Override
  Split usual(String name, String title, LocalDate start, Fields in) {
    return split(title, start, in);
  }

  @Override
  void writeUsual(Split split, ObjectForm.Written out) {
    out.put(BEES_LEAVING, split.beesLeaving());
    out.put(BROOD_LEAVING, split.broodLeaving());
    out.put(WITHOUT_LAYING, split.daysWithoutLaying());
  }

  @Override
  List<HiveVisit> hands(Split split, Handling handling) {
    return ControlFields.withoutLaying(
        split.from(), "move bees and brood", split.daysWithoutLaying());
  }

  private static Split split(String name, LocalDate on, Fields in) {
    return new Split(
        name, on, in.need(BEES_LEAVING), in.need(BROOD_LEAVING), in.need(WITHOUT_LAYING));
  }
}
