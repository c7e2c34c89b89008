package broodtide.study;

import static broodtide.catalog.ControlFields.APPLICATIONS;
import static broodtide.catalog.ControlFields.EVERY;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlKind;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplateFile;
import broodtide.catalog.LibraryForm;
import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.Form;
import broodtide.forms.KindForm;
import broodtide.forms.Node;
import broodtide.forms.ObjectForm;
import broodtide.forms.Reading;
import broodtide.forms.SchemaParts;
import broodtide.forms.TextForm;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A control of a study: taken from the library with {@code use}, or written out with {@code kind}.
 */
record ControlForm() implements Form<Control> {
  private static final Field<LocalDate> START = Field.required("start", DateForm.DATE, "first day");

  static final KindForm<Control> WRITTEN_OUT =
      new KindForm<>("control", ControlKind.ALL.stream().map(ControlKind::inStudy).toList());

  private static final Field<ControlTemplate> USE =
      Field.required(
          "use",
          new LibraryForm<>(Catalog.CONTROLS, ControlTemplateFile.FORM),
          "name of a control of the library, or path of a file of your own");
  private static final Field<String> NAME =
      Field.optional("name", TextForm.LINE, "what to call it; its title when left out");
  private static final Field<Integer> TIMES =
      Field.optional(
          "applications",
          APPLICATIONS.form(),
          "how often a miticide is given; as in the library when left out");

  private static final ObjectForm<Control> FROM_LIBRARY =
      new ObjectForm<>(
          "library-control",
          "a control of the library, begun on a day",
          List.of(USE, START, NAME, TIMES, EVERY),
          ControlForm::fromLibrary,
          (c, out) -> {
            throw new IllegalArgumentException("controls are written out in full");
          });

  private static @Nullable Control fromLibrary(Fields in) {
    ControlTemplate template = in.need(USE);
    Control control = template.at(in.need(START));
    if (in.given(TIMES) || in.given(EVERY)) {
      Optional<MiticideCourse> course = control.course();
      if (course.isEmpty()) {
        Stream.of(TIMES, EVERY)
            .filter(in::given)
            .forEach(field -> in.fault(field, "only miticides are given several times; remove it"));
        return null;
      }
      int times = in.given(TIMES) ? in.need(TIMES) : course.get().applications();
      int every = in.given(EVERY) ? in.need(EVERY) : course.get().every();
      control = control.repeated(times, every).orElse(control);
    }
    return in.given(NAME) ? control.named(in.need(NAME)) : control;
  }

  @Override
  public @Nullable Control read(Node node, Reading in) {
    if (!(node instanceof Node.Obj object)) {
      in.fault(node, "expected a control { ... } with \"use\" or \"kind\"");
      return null;
    }
    if (object.members().containsKey("use")) {
      return FROM_LIBRARY.read(node, in);
    }
    if (!object.members().containsKey("kind")) {
      in.fault(
          node.spot(),
          null,
          "a control needs \"use\" with a name of the library, or \"kind\" with one of "
              + String.join(", ", WRITTEN_OUT.kinds().stream().map(KindForm.Kind::word).toList()));
      return null;
    }
    return WRITTEN_OUT.read(node, in);
  }

  @Override
  public JsonNode write(Control value) {
    return WRITTEN_OUT.write(value);
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return parts.refer(
        "control",
        () -> {
          ObjectNode out = SchemaParts.object();
          ArrayNode choices = out.putArray("oneOf");
          choices.add(FROM_LIBRARY.schema(parts));
          WRITTEN_OUT.kinds().forEach(k -> choices.add(k.form().schema(parts)));
          return out;
        });
  }
}
