package broodtide.study;

import static broodtide.catalog.ControlFields.APPLICATIONS;
import static broodtide.catalog.ControlFields.BEES_LEAVING;
import static broodtide.catalog.ControlFields.BROOD_LEAVING;
import static broodtide.catalog.ControlFields.DRONE_SHARE;
import static broodtide.catalog.ControlFields.EVERY;
import static broodtide.catalog.ControlFields.HYGIENE;
import static broodtide.catalog.ControlFields.TAKEN;
import static broodtide.catalog.ControlFields.VIGOUR;
import static broodtide.catalog.ControlFields.WITHOUT_LAYING;

import broodtide.catalog.ControlFields;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplateFile;
import broodtide.catalog.LibraryForm;
import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.MiticideCourse;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.Form;
import broodtide.forms.KindForm;
import broodtide.forms.ListForm;
import broodtide.forms.Node;
import broodtide.forms.ObjectForm;
import broodtide.forms.Reading;
import broodtide.forms.SchemaParts;
import broodtide.forms.TextForm;
import broodtide.lesson.Library;
import broodtide.mite.StockTraits;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A control of a study: taken from the library with {@code use}, or written out with {@code kind}.
 */
record ControlForm() implements Form<Control> {
  private static final Field<LocalDate> START = Field.required("start", DateForm.DATE, "first day");
  private static final Field<LocalDate> INSERTED =
      Field.required("inserted", DateForm.DATE, "first day on which the comb is in the hive");
  private static final Field<List<LocalDate>> CUTS =
      Field.required(
          "cuts",
          new ListForm<>(DateForm.DATE, 1, 20),
          "days on which the drone brood is cut out, rising");
  private static final Field<LocalDate> FROM =
      Field.required("from", DateForm.DATE, "first day in the cage");
  private static final Field<LocalDate> TO =
      Field.required("to", DateForm.DATE, "last day in the cage, at most 120 days later");
  private static final Field<LocalDate> ON = Field.required("on", DateForm.DATE, "the day");
  private static final Field<String> NAMED =
      Field.required("name", TextForm.LINE, "what to call it, by its active substance");
  private static final Field<String> ACTS_AS =
      Field.optional(
          "miticide",
          TextForm.LINE,
          "short name that stays the same whatever the course is called, for example"
              + " oxalic-dribble; the name when left out");
  private static final Field<String> COMB = name("drone comb");
  private static final Field<String> CAGE = name("caged queen");
  private static final Field<String> SPLIT = name("split");
  private static final Field<String> QUEEN = name("new queen");

  static final KindForm<Control> WRITTEN_OUT =
      new KindForm<>(
          "control",
          List.of(
              KindForm.kind(
                  "miticide",
                  MiticideCourse.class,
                  "a miticide given once or several times",
                  Stream.concat(Stream.of(NAMED, ACTS_AS, START), ControlFields.SUBSTANCE.stream())
                      .toList(),
                  in ->
                      new MiticideCourse(
                          in.need(NAMED),
                          ControlFields.miticide(
                              in.given(ACTS_AS) ? in.need(ACTS_AS) : in.need(NAMED), in),
                          in.need(START),
                          in.need(APPLICATIONS),
                          ControlFields.every(in)),
                  (c, out) -> {
                    out.put(NAMED, c.name());
                    if (!c.substance().name().equals(c.name())) {
                      out.put(ACTS_AS, c.substance().name());
                    }
                    out.put(START, c.start());
                    ControlFields.spell(c.substance(), c.applications(), c.every(), out);
                  }),
              KindForm.kind(
                  "drone-comb",
                  DroneCombRemoval.class,
                  "drone comb given and cut out with its brood",
                  List.of(COMB, INSERTED, CUTS, TAKEN, DRONE_SHARE),
                  in ->
                      new DroneCombRemoval(
                          in.need(COMB),
                          in.need(INSERTED),
                          in.need(CUTS),
                          in.need(TAKEN),
                          in.need(DRONE_SHARE)),
                  (c, out) -> {
                    out.put(COMB, c.name());
                    out.put(INSERTED, c.inserted());
                    out.put(CUTS, c.cuts());
                    out.put(TAKEN, c.taken());
                    out.put(DRONE_SHARE, c.droneShare());
                  }),
              KindForm.kind(
                  "queen-caging",
                  QueenCaging.class,
                  "the queen caged so that no eggs are laid",
                  List.of(CAGE, FROM, TO),
                  in -> new QueenCaging(in.need(CAGE), in.need(FROM), in.need(TO)),
                  (c, out) -> {
                    out.put(CAGE, c.name());
                    out.put(FROM, c.from());
                    out.put(TO, c.to());
                  }),
              KindForm.kind(
                  "split",
                  Split.class,
                  "bees and brood moved away; a shook swarm leaves all the brood behind",
                  List.of(SPLIT, ON, BEES_LEAVING, BROOD_LEAVING, WITHOUT_LAYING),
                  in ->
                      new Split(
                          in.need(SPLIT),
                          in.need(ON),
                          in.need(BEES_LEAVING),
                          in.need(BROOD_LEAVING),
                          in.need(WITHOUT_LAYING)),
                  (c, out) -> {
                    out.put(SPLIT, c.name());
                    out.put(ON, c.from());
                    out.put(BEES_LEAVING, c.beesLeaving());
                    out.put(BROOD_LEAVING, c.broodLeaving());
                    out.put(WITHOUT_LAYING, c.daysWithoutLaying());
                  }),
              KindForm.kind(
                  "requeening",
                  Requeening.class,
                  "a new queen of other stock",
                  List.of(QUEEN, ON, HYGIENE, VIGOUR, WITHOUT_LAYING),
                  in ->
                      new Requeening(
                          in.need(QUEEN),
                          in.need(ON),
                          new StockTraits(in.need(HYGIENE), in.need(VIGOUR)),
                          in.need(WITHOUT_LAYING)),
                  (c, out) -> {
                    out.put(QUEEN, c.name());
                    out.put(ON, c.from());
                    out.put(HYGIENE, c.stock().hygiene());
                    out.put(VIGOUR, c.stock().vigour());
                    out.put(WITHOUT_LAYING, c.daysWithoutLaying());
                  })));

  private static final Field<ControlTemplate> USE =
      Field.required(
          "use",
          new LibraryForm<>(Library.Shelf.CONTROLS, ControlTemplateFile.FORM),
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

  private static Field<String> name(String usual) {
    return Field.optional("name", TextForm.LINE, usual, "what to call it");
  }

  private static @Nullable Control fromLibrary(Fields in) {
    ControlTemplate template = in.need(USE);
    ControlTemplate.Action action = template.action();
    if (action instanceof ControlTemplate.Treatment t) {
      int times = in.given(TIMES) ? in.need(TIMES) : t.applications();
      int every = in.given(EVERY) ? in.need(EVERY) : t.every();
      action = t.given(times, every);
    } else {
      boolean refused = false;
      for (Field<?> field : List.of(TIMES, EVERY)) {
        if (in.given(field)) {
          in.fault(field, "only miticides are given several times; remove it");
          refused = true;
        }
      }
      if (refused) {
        return null;
      }
    }
    return action.at(in.given(NAME) ? in.need(NAME) : template.title(), in.need(START));
  }

  @Override
  public @Nullable Control read(Node node, Reading in) {
    if (!(node instanceof Node.Obj object)) {
      in.fault(node, "allowed is a control { ... } with \"use\" or \"kind\"");
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
