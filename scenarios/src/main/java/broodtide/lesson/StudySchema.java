package broodtide.lesson;

import broodtide.catalog.ClimateFile;
import broodtide.catalog.ControlTemplateFile;
import broodtide.forms.NeatJson;
import broodtide.forms.ObjectForm;
import broodtide.forms.SchemaParts;
import broodtide.study.StudyForm;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;

/**
 * JSON Schema (2020-12) of the files, made from the definitions that the reader itself uses. The
 * reader checks more than a schema can say: dates against each other, names of the library, and
 * files that are referred to.
 */
public final class StudySchema {
  private static final String COMMENTS =
      " Comments, // to the end of a line or /* ... */, are allowed wherever a blank is; editors"
          + " may call the dialect JSON with comments.";

  private StudySchema() {}

  /** {@return the schema of a study} */
  public static String study() {
    return whole("Study", StudyForm.FORM);
  }

  /** {@return the schema of a climate} */
  public static String climate() {
    return whole("Climate", ClimateFile.FORM);
  }

  /** {@return the schema of a control with its usual values} */
  public static String control() {
    SchemaParts parts = new SchemaParts();
    ObjectNode body = ControlTemplateFile.FORM.schema(parts);
    body.put("description", "A control with its usual values." + COMMENTS);
    return text("Control", body, parts);
  }

  /** {@return the schema of a lesson} */
  public static String lesson() {
    return whole("Lesson", LessonForm.FORM);
  }

  private static String whole(String title, ObjectForm<?> form) {
    SchemaParts parts = new SchemaParts();
    ObjectNode body = form.body(parts);
    String meaning = form.meaning();
    body.put(
        "description",
        Character.toUpperCase(meaning.charAt(0)) + meaning.substring(1) + "." + COMMENTS);
    return text(title, body, parts);
  }

  private static String text(String title, ObjectNode body, SchemaParts parts) {
    ObjectNode out = SchemaParts.object();
    out.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    out.put("$id", "urn:broodtide:" + title.toLowerCase(Locale.ROOT));
    out.put("title", title);
    out.setAll(body);
    if (!parts.all().isEmpty()) {
      out.set("$defs", parts.all());
    }
    return NeatJson.text(out);
  }
}
