package broodtide.study;

import broodtide.control.Control;
import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import broodtide.forms.Nearest;
import broodtide.table.Sheet;
import broodtide.table.SheetText;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The treatments already given, from a table file.
 *
 * <p>The header names the columns, in any order and case: {@code date,colony,control}, of which
 * {@code colony} may be blank or {@code *} for every colony, and {@code control} is a control of
 * the library; if wanted {@code applications,every} for a miticide given otherwise than usual,
 * {@code days_without_laying} for splits, caging and requeening, and {@code note}. Cells are parted
 * and dates are read as in {@link WashFile}.
 *
 * @param name the file's name as the user gave it
 * @param given the treatments in the order of the file
 * @param colonies the line on which each colony first stands, in the order of the file
 * @param notes what was read in one of several ways or not used, in sentences
 */
public record TreatmentFile(
    String name, List<Given> given, Map<String, Integer> colonies, List<String> notes) {
  /** Most strange colonies that are named; the rest are counted. */
  private static final int STRANGERS = 5;

  /** Copies the lists and the map. */
  public TreatmentFile {
    given = List.copyOf(given);
    colonies = Collections.unmodifiableMap(new LinkedHashMap<>(colonies));
    notes = List.copyOf(notes);
  }

  /**
   * One treatment.
   *
   * @param colony its colony; empty for every colony
   * @param control what was done
   * @param note the beekeeper's note, may be empty
   */
  public record Given(String colony, Control control, String note) {
    /**
     * {@return whether this colony was treated}
     *
     * @param name name of a colony
     */
    public boolean concerns(String name) {
      return colony.isEmpty() || colony.equals(name);
    }
  }

  /**
   * Reads treatments from bytes; see {@link WashFile#read(InputStream, String, LocalDate)}.
   *
   * @param in the bytes; not closed here
   * @param name the name to show in messages
   * @param today treatments begun after this day are refused
   * @return the treatments
   * @throws BadInput with every fault of the file
   * @throws IOException when it cannot be read at all
   */
  public static TreatmentFile read(InputStream in, String name, LocalDate today)
      throws IOException {
    SheetText text = SheetText.read(in, name);
    Faults faults = new Faults(name);
    Sheet sheet = Sheet.of(text.text(), name, TreatmentRows.COLUMNS, TreatmentRows.REQUIRED);
    TreatmentRows rows = TreatmentRows.under(sheet, today, faults);
    sheet.each(rows::look, new Faults(name));
    rows.judge();
    sheet.each(rows::take, faults);
    faults.throwIfAny();
    if (rows.given().isEmpty()) {
      throw BadInput.of(
          Fault.of(name, "has a header and no treatments; add a row such as 2025-08-15,A,thymol"));
    }
    List<String> notes = new ArrayList<>(text.notes());
    notes.addAll(rows.notes());
    return new TreatmentFile(name, rows.given(), rows.colonies(), notes);
  }

  /**
   * {@return what was done to a colony, by date}
   *
   * @param colony name of the colony
   */
  public List<Control> of(String colony) {
    return given.stream()
        .filter(g -> g.concerns(colony))
        .map(Given::control)
        .sorted(java.util.Comparator.comparing(Control::from))
        .toList();
  }

  /**
   * {@return notes on treatments of colonies that are not among these, which are not used}
   *
   * @param washed names of the colonies that there are
   */
  public List<String> unused(Set<String> washed) {
    Set<String> strangers = new TreeSet<>();
    for (Given g : given) {
      if (!g.colony().isEmpty() && !washed.contains(g.colony())) {
        strangers.add(g.colony());
      }
    }
    List<String> notes = new ArrayList<>();
    strangers.stream()
        .limit(STRANGERS)
        .map(
            c ->
                "Treatments of colony "
                    + Fault.quoted(c)
                    + " in "
                    + name
                    + " are not used, for it has no washes"
                    + Nearest.hint(c, washed)
                    + (Nearest.to(c, washed).isEmpty() ? "." : ""))
        .forEach(notes::add);
    if (strangers.size() > STRANGERS) {
      notes.add(
          "Nor are those of "
              + (strangers.size() - STRANGERS)
              + " more colonies in "
              + name
              + ", which have no washes.");
    }
    return notes;
  }
}
