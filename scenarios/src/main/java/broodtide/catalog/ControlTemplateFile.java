package broodtide.catalog;

import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.forms.BadInput;
import broodtide.forms.Field;
import broodtide.forms.KindForm;
import broodtide.forms.ListForm;
import broodtide.forms.NeatJson;
import broodtide.forms.ObjectForm;
import broodtide.forms.Reading;
import broodtide.forms.Source;
import broodtide.forms.TextForm;
import java.util.List;

/** Controls with their usual values as JSON. */
public final class ControlTemplateFile {
  static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "short name, for example oxalic-dribble");
  static final Field<String> TITLE = Field.required("title", TextForm.LINE, "one line for people");
  static final Field<Efficacy> EFFICACY =
      Field.optional("efficacy", EfficacyForm.FORM, "what a trial or practice saw of it");
  static final Field<List<String>> NOTES = lines("notes", "what to know about it");
  static final Field<List<String>> CAUTIONS = lines("cautions", "cautions");

  /** Fields of every kind, after its own. */
  static final List<Field<?>> LAST = List.of(EFFICACY, Handling.FIELD, NOTES, CAUTIONS);

  /** The form of a control of the library, for the reader, the writer and the schema. */
  public static final KindForm<ControlTemplate> FORM =
      new KindForm<>("template", ControlKind.ALL.stream().map(ControlKind::inLibrary).toList());

  private ControlTemplateFile() {}

  /**
   * Reads a control with its usual values.
   *
   * @param source where the text comes from; its name appears in every fault
   * @return the control
   * @throws BadInput with every fault there is
   */
  public static ControlTemplate read(Source source) {
    return Reading.whole(source, FORM);
  }

  /**
   * {@return a control with its usual values as the text of a file}
   *
   * @param template the control of the library
   */
  public static String write(ControlTemplate template) {
    return NeatJson.text(FORM.write(template));
  }

  /** Writes the fields of every kind that come after its own. */
  static void writeLast(ControlTemplate template, ObjectForm.Written out) {
    template.efficacy().ifPresent(e -> out.put(EFFICACY, e));
    out.put(Handling.FIELD, template.handling());
    out.put(NOTES, template.notes());
    out.put(CAUTIONS, template.cautions());
  }

  private static Field<List<String>> lines(String name, String meaning) {
    return Field.optional(name, new ListForm<>(TextForm.NOTE, 0, 50), List.of(), meaning);
  }
}
