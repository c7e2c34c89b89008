package broodtide.study;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.forms.BadInput;
import broodtide.forms.Faults;
import broodtide.forms.HiddenCharacters;
import broodtide.forms.Nearest;
import broodtide.forms.TextForm;
import broodtide.measure.OutOfRange;
import broodtide.measure.RefusedException;
import broodtide.table.CellReader;
import broodtide.table.Header;
import broodtide.table.PastDays;
import broodtide.table.Sheet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/** Turns the rows of a sheet into treatments, in two readings: dates first, then everything. */
final class TreatmentRows implements TableRows {
  static final List<String> REQUIRED = List.of("date", "colony", "control");

  /** Columns that are read, in the order of {@link RowSieve}. */
  static final List<String> ORDER =
      List.of("date", "colony", "control", "applications", "every", "days_without_laying", "note");

  static final Set<String> COLUMNS = Set.copyOf(ORDER);
  private static final String EVERY_COLONY = "*";

  private final List<String> columns;
  private final Faults faults;
  private final CellReader cells;
  private final PastDays days;
  private final List<TreatmentFile.Given> given = new ArrayList<>();
  private final Map<TreatmentFile.Given, Integer> lines = new LinkedHashMap<>();
  private final Map<String, Integer> colonies = new LinkedHashMap<>();
  private final Map<String, ControlTemplate> known;
  private final IntFunction<String> place;

  private TreatmentRows(
      List<String> columns,
      Faults faults,
      CellReader cells,
      PastDays days,
      Map<String, ControlTemplate> known,
      IntFunction<String> place) {
    this.columns = columns;
    this.faults = faults;
    this.cells = cells;
    this.days = days;
    this.known = known;
    this.place = place;
  }

  /**
   * Checks the header.
   *
   * @throws BadInput when a required column is missing or one is there twice
   */
  static TreatmentRows under(Sheet sheet, LocalDate today, Faults faults) {
    Header.check(sheet, REQUIRED, COLUMNS, faults);
    return of(sheet.columns, today, faults, WashRows.PLACE);
  }

  /**
   * Rows without a header of their own.
   *
   * @param place what messages call a line
   */
  static TreatmentRows of(
      List<String> columns, LocalDate today, Faults faults, IntFunction<String> place) {
    CellReader cells = new CellReader(columns, faults);
    PastDays days =
        new PastDays(
            columns, cells, faults, WashFile.EARLIEST, today, "write the first day as 2025-08-15");
    return new TreatmentRows(columns, faults, cells, days, new HashMap<>(), place);
  }

  @Override
  public TreatmentRows forgetful() {
    return new TreatmentRows(columns, faults, cells, days, known, place);
  }

  @Override
  public @Nullable LocalDate date(int line, String[] row) {
    return days.read(line, row);
  }

  @Override
  public void look(int line, String[] row) {
    days.look(line, row);
  }

  @Override
  public void judge() {
    days.judge();
  }

  @Override
  public void take(int line, String[] row) {
    int before = faults.total();
    LocalDate date = days.read(line, row);
    cells.limit(line, row, "colony", TextForm.LINE);
    cells.limit(line, row, "note", TextForm.NOTE);
    ControlTemplate template = template(line, row);
    OptionalInt applications = cells.count(line, row, "applications");
    OptionalInt every = cells.count(line, row, "every");
    OptionalInt without = cells.count(line, row, "days_without_laying");
    if (date == null || template == null || faults.total() > before) {
      return;
    }
    String colony = cells.name(row, "colony");
    if (!colony.isEmpty() && !colony.equals(EVERY_COLONY)) {
      colonies.putIfAbsent(colony, line);
    }
    try {
      Control control = changed(line, row, template.at(date), applications, every, without);
      if (faults.total() > before) {
        return;
      }
      keep(
          line,
          new TreatmentFile.Given(
              colony.equals(EVERY_COLONY) ? "" : colony,
              control,
              HiddenCharacters.marked(cells.text(row, "note"))));
    } catch (OutOfRange e) {
      String column = e.field().equals("daysWithoutLaying") ? "days_without_laying" : e.field();
      cells.fault(line, row, column, "expected " + e.allowed());
    }
  }

  private @Nullable ControlTemplate template(int line, String[] row) {
    List<String> names = Catalog.CONTROLS.names();
    String all = String.join(", ", names);
    String written = cells.required(line, row, "control", "name one of " + all);
    if (written.isEmpty()) {
      return null;
    }
    String name = CellReader.word(written);
    if (!names.contains(name)) {
      cells.fault(line, row, "control", "choose one of " + all + Nearest.hint(name, names));
      return null;
    }
    return known.computeIfAbsent(name, Catalog::control);
  }

  private Control changed(
      int line,
      String[] row,
      Control usual,
      OptionalInt applications,
      OptionalInt every,
      OptionalInt without) {
    Control control = usual;
    if (applications.isPresent() || every.isPresent()) {
      Optional<MiticideCourse> course = usual.course();
      if (course.isPresent()) {
        MiticideCourse c = course.get();
        control =
            c.repeated(applications.orElse(c.applications()), every.orElse(c.every())).orElse(c);
      } else {
        refuse(line, row, "applications", applications, "miticides");
        refuse(line, row, "every", every, "miticides");
      }
    }
    if (without.isPresent()) {
      Optional<Control> other = control.withDaysWithoutLaying(without.getAsInt());
      if (other.isPresent()) {
        return other.get();
      }
      refuse(line, row, "days_without_laying", without, "splits, caging and requeening");
    }
    return control;
  }

  private void refuse(int line, String[] row, String column, OptionalInt cell, String kinds) {
    if (cell.isPresent()) {
      cells.fault(line, row, column, "only " + kinds + " have this; leave the cell blank");
    }
  }

  private void keep(int line, TreatmentFile.Given one) {
    Integer first = lines.putIfAbsent(one, line);
    if (first != null) {
      faults.add(
          line,
          0,
          "",
          null,
          "the row is the same as " + place.apply(first) + "; remove one of them");
      return;
    }
    overlap(one).ifPresent(why -> faults.add(line, 0, "", null, why));
    given.add(one);
  }

  /** Why a brood break cannot stand beside those of the same colony. */
  private Optional<String> overlap(TreatmentFile.Given one) {
    for (TreatmentFile.Given other : given) {
      boolean together =
          one.colony().isEmpty() || other.colony().isEmpty() || one.concerns(other.colony());
      if (together && one.control().daysWithoutLaying() > 0) {
        try {
          List<Control> both = List.of(other.control(), one.control());
          new Plan("treatments given", both).controls();
        } catch (RefusedException e) {
          return Optional.of(e.reason());
        }
      }
    }
    return Optional.empty();
  }

  /** The treatments, in the order of the file. */
  List<TreatmentFile.Given> given() {
    return given;
  }

  /** The line on which each colony first stands, in the order of the file. */
  Map<String, Integer> colonies() {
    return colonies;
  }

  /** What was read in one of several ways, or not used. */
  List<String> notes() {
    List<String> notes = new ArrayList<>(days.notes());
    Header.unused(columns, COLUMNS, " of the treatments").ifPresent(notes::add);
    notes.addAll(LookalikeNames.within(LookalikeNames.lines(colonies, " of the treatments")));
    return notes;
  }
}
