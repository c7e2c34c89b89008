package broodtide.catalog;

import static broodtide.catalog.ControlFields.BEES_LEAVING;
import static broodtide.catalog.ControlFields.BROOD_LEAVING;
import static broodtide.catalog.ControlFields.DRONE_SHARE;
import static broodtide.catalog.ControlFields.HYGIENE;
import static broodtide.catalog.ControlFields.TAKEN;
import static broodtide.catalog.ControlFields.VIGOUR;
import static broodtide.catalog.ControlFields.WITHOUT_LAYING;

import broodtide.catalog.ControlTemplate.Action;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.forms.BadInput;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.KindForm;
import broodtide.forms.ListForm;
import broodtide.forms.NeatJson;
import broodtide.forms.ObjectForm;
import broodtide.forms.Reading;
import broodtide.forms.Source;
import broodtide.forms.TextForm;
import broodtide.forms.WholeForm;
import broodtide.measure.OutOfRange;
import broodtide.mite.StockTraits;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Stream;

/** Controls with their usual values as JSON. */
public final class ControlTemplateFile {
  private static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "short name, for example oxalic-dribble");
  private static final Field<String> TITLE =
      Field.required("title", TextForm.LINE, "one line for people");
  private static final Field<String> SUBSTANCE =
      Field.required("substance", TextForm.LINE, "the active substance");
  private static final Field<List<Integer>> CUTS_AFTER =
      Field.required(
          "cutsAfter",
          new ListForm<>(new WholeForm(1, 120, "days"), 1, 20),
          "days from the day the comb goes in to each cut, rising");
  private static final Field<Integer> CAGED =
      Field.required("days", new WholeForm(1, 121, "days"), "days in the cage");
  private static final Field<Efficacy> EFFICACY =
      Field.optional("efficacy", EfficacyForm.FORM, "what a trial or practice saw of it");
  private static final Field<List<String>> NOTES = lines("notes", "what to know about it");
  private static final Field<List<String>> CAUTIONS = lines("cautions", "what to beware of");

  /** The form of a control of the library, for the reader, the writer and the schema. */
  public static final KindForm<ControlTemplate> FORM =
      new KindForm<>(
          "template",
          List.of(
              kind(
                  "miticide",
                  ControlTemplate.Treatment.class,
                  Stream.concat(Stream.of(SUBSTANCE), ControlFields.SUBSTANCE.stream()).toList(),
                  in ->
                      new ControlTemplate.Treatment(
                          in.need(SUBSTANCE),
                          ControlFields.miticide(in.need(NAME), in),
                          in.need(ControlFields.APPLICATIONS),
                          ControlFields.every(in)),
                  (a, out) -> {
                    out.put(SUBSTANCE, a.substance());
                    ControlFields.spell(a.miticide(), a.applications(), a.every(), out);
                  }),
              kind(
                  "drone-comb",
                  ControlTemplate.DroneComb.class,
                  List.of(CUTS_AFTER, TAKEN, DRONE_SHARE),
                  in ->
                      new ControlTemplate.DroneComb(
                          rising(in), in.need(TAKEN), in.need(DRONE_SHARE)),
                  (a, out) -> {
                    out.put(CUTS_AFTER, a.cutsAfter());
                    out.put(TAKEN, a.taken());
                    out.put(DRONE_SHARE, a.droneShare());
                  }),
              kind(
                  "queen-caging",
                  ControlTemplate.Caging.class,
                  List.of(CAGED),
                  in -> new ControlTemplate.Caging(in.need(CAGED)),
                  (a, out) -> out.put(CAGED, a.days())),
              kind(
                  "split",
                  ControlTemplate.Division.class,
                  List.of(BEES_LEAVING, BROOD_LEAVING, WITHOUT_LAYING),
                  in ->
                      new ControlTemplate.Division(
                          in.need(BEES_LEAVING), in.need(BROOD_LEAVING), in.need(WITHOUT_LAYING)),
                  (a, out) -> {
                    out.put(BEES_LEAVING, a.beesLeaving());
                    out.put(BROOD_LEAVING, a.broodLeaving());
                    out.put(WITHOUT_LAYING, a.daysWithoutLaying());
                  }),
              kind(
                  "requeening",
                  ControlTemplate.NewQueen.class,
                  List.of(HYGIENE, VIGOUR, WITHOUT_LAYING),
                  in ->
                      new ControlTemplate.NewQueen(
                          new StockTraits(in.need(HYGIENE), in.need(VIGOUR)),
                          in.need(WITHOUT_LAYING)),
                  (a, out) -> {
                    out.put(HYGIENE, a.stock().hygiene());
                    out.put(VIGOUR, a.stock().vigour());
                    out.put(WITHOUT_LAYING, a.daysWithoutLaying());
                  })));

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

  private static <A extends Action> KindForm.Kind<ControlTemplate> kind(
      String word,
      Class<A> type,
      List<Field<?>> own,
      Function<Fields, A> make,
      BiConsumer<A, ObjectForm.Written> spell) {
    Field<String> kind = KindForm.kindField(word);
    List<Field<?>> fields =
        Stream.of(List.of(kind, NAME, TITLE), own, List.of(EFFICACY, NOTES, CAUTIONS))
            .<Field<?>>flatMap(List::stream)
            .toList();
    ObjectForm<ControlTemplate> form =
        new ObjectForm<>(
            word,
            "a control with its usual values, kind " + word,
            fields,
            in ->
                new ControlTemplate(
                    in.need(NAME),
                    in.need(TITLE),
                    make.apply(in),
                    in.find(EFFICACY),
                    in.need(NOTES),
                    in.need(CAUTIONS)),
            (t, out) -> {
              out.put(kind, word);
              out.put(NAME, t.name());
              out.put(TITLE, t.title());
              spell.accept(type.cast(t.action()), out);
              t.efficacy().ifPresent(e -> out.put(EFFICACY, e));
              out.put(NOTES, t.notes());
              out.put(CAUTIONS, t.cautions());
            });
    return new KindForm.Kind<>(word, t -> type.isInstance(t.action()), form);
  }

  private static Field<List<String>> lines(String name, String is) {
    return Field.optional(name, new ListForm<>(TextForm.NOTE, 0, 50), List.of(), is);
  }

  private static List<Integer> rising(Fields in) {
    List<Integer> days = in.need(CUTS_AFTER);
    for (int i = 1; i < days.size(); i++) {
      if (days.get(i) <= days.get(i - 1)) {
        throw new OutOfRange("cutsAfter", days.toString(), "days that rise from cut to cut");
      }
    }
    return days;
  }
}
