package broodtide.classroom;

import broodtide.catalog.ControlKind;
import broodtide.control.Control;
import broodtide.lesson.Lesson;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Something done to the colony, marked on a chart.
 *
 * @param label a few words
 * @param on the day it begins
 */
record ControlMark(String label, LocalDate on) {
  /** Marks of a plan: where each control begins, and every cut of drone comb. */
  static List<ControlMark> of(List<Control> controls) {
    List<ControlMark> out = new ArrayList<>();
    for (Control c : controls) {
      ControlKind<?> kind = ControlKind.of(c);
      String label = kind.mark().orElseGet(() -> shortly(c.name()));
      kind.daysToMark(c).forEach(day -> out.add(new ControlMark(label, day)));
    }
    return out;
  }

  /** Marks of a lesson, one for each day; where plans differ by day, named after the plan. */
  static List<ControlMark> of(Lesson lesson) {
    Map<LocalDate, ControlMark> marks = new LinkedHashMap<>();
    Map<LocalDate, ControlMark> plans = new LinkedHashMap<>();
    for (Lesson.Line line : lesson.lines()) {
      for (ControlMark mark : of(line.scenario().plan().controls())) {
        marks.putIfAbsent(mark.on(), mark);
        plans.putIfAbsent(mark.on(), new ControlMark(line.name(), mark.on()));
      }
    }
    boolean cuts = marks.values().stream().map(ControlMark::label).distinct().count() < 2;
    boolean sameSubstance = cuts && lesson.lines().size() == marks.size();
    return List.copyOf((sameSubstance ? plans : marks).values());
  }

  /** A control's title up to its first break: {@code Oxalic acid}. */
  static String shortly(String title) {
    return title.split("[,:(]")[0].strip();
  }
}
