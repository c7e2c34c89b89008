package broodtide.catalog;

import static broodtide.catalog.ControlFields.DRONE_SHARE;
import static broodtide.catalog.ControlFields.TAKEN;

import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ListForm;
import broodtide.forms.Node;
import broodtide.forms.ObjectForm;
import broodtide.forms.Placed;
import broodtide.forms.WholeForm;
import broodtide.measure.OutOfRange;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Drone comb given and cut out with its brood. */
final class DroneCombKind extends ControlKind<DroneCombRemoval> {
  private static final Field<String> NAME = name("drone comb");
  private static final Field<LocalDate> INSERTED =
      Field.required("inserted", DateForm.DATE, "first day on which the comb is in the hive");
  private static final Field<List<LocalDate>> CUTS =
      Field.required(
          "cuts",
          new ListForm<>(DateForm.DATE, 1, 20),
          "days on which the drone brood is cut out, rising");
  private static final Field<List<Integer>> CUTS_AFTER =
      Field.required(
          "cutsAfter",
          new ListForm<>(new WholeForm(1, 120, "days"), 1, 20),
          "days from the day the comb goes in to each cut, rising");

  DroneCombKind() {
    super("drone-comb", DroneCombRemoval.class, "drone comb given and cut out with its brood");
  }

  @Override
  List<Field<?>> datedFields() {
    return List.of(NAME, INSERTED, CUTS, TAKEN, DRONE_SHARE);
  }

  @Override
  DroneCombRemoval dated(Fields in) {
    return new DroneCombRemoval(
        in.need(NAME), in.need(INSERTED), in.need(CUTS), in.need(TAKEN), in.need(DRONE_SHARE));
  }

  @Override
  void writeDated(DroneCombRemoval comb, ObjectForm.Written out) {
    out.put(NAME, comb.name());
    out.put(INSERTED, comb.inserted());
    out.put(CUTS, comb.cuts());
    out.put(TAKEN, comb.taken());
    out.put(DRONE_SHARE, comb.droneShare());
  }

  @Override
  List<Field<?>> usualFields() {
    return List.of(CUTS_AFTER, TAKEN, DRONE_SHARE);
  }

  @Override
  DroneCombRemoval usual(String name, String title, LocalDate start, Fields in) {
    List<Integer> days = in.need(CUTS_AFTER);
    for (int i = 1; i < days.size(); i++) {
      if (days.get(i) <= days.get(i - 1)) {
        throw new OutOfRange("cutsAfter", days.toString(), "days that rise from cut to cut");
      }
    }
    List<LocalDate> cuts = days.stream().map(start::plusDays).toList();
    return new DroneCombRemoval(title, start, cuts, in.need(TAKEN), in.need(DRONE_SHARE));
  }

  @Override
  void writeUsual(DroneCombRemoval comb, ObjectForm.Written out) {
    out.put(
        CUTS_AFTER,
        comb.cuts().stream()
            .map(cut -> Math.toIntExact(ChronoUnit.DAYS.between(comb.inserted(), cut)))
            .toList());
    out.put(TAKEN, comb.taken());
    out.put(DRONE_SHARE, comb.droneShare());
  }

  @Override
  List<Obstacle> against(DroneCombRemoval comb, Climate climate) {
    return climate.droneShare().at(comb.from()) > 0
        ? List.of()
        : List.of(
            new Obstacle(
                Obstacle.Kind.NO_DRONES,
                comb.name() + " from " + comb.from() + ": colonies usually rear no drones then"));
  }

  @Override
  public Optional<String> mark() {
    return Optional.of("comb cut");
  }

  @Override
  List<LocalDate> marked(DroneCombRemoval comb) {
    return comb.cuts();
  }

  @Override
  List<HiveVisit> hands(DroneCombRemoval comb, Handling handling) {
    List<HiveVisit> out = new ArrayList<>();
    out.add(new HiveVisit(comb.inserted(), "put the comb in"));
    int cuts = comb.cuts().size();
    for (int i = 0; i < cuts; i++) {
      out.add(
          new HiveVisit(
              comb.cuts().get(i), "cut out the drone brood" + ControlFields.count(i, cuts)));
    }
    return out;
  }

  @Override
  Map<Node, LocalDate> laterDays(DroneCombRemoval comb, Placed<Control> written) {
    Map<Node, LocalDate> out = new LinkedHashMap<>();
    Node cuts = written.at(CUTS.name());
    for (int i = 0; i < comb.cuts().size(); i++) {
      Node at = cuts instanceof Node.Arr list ? list.items().get(i) : written.at("start");
      out.put(at, comb.cuts().get(i));
    }
    return out;
  }
}
