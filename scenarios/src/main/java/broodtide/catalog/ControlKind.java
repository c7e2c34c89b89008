package broodtide.catalog;

import broodtide.control.Control;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.KindForm;
import broodtide.forms.Node;
import broodtide.forms.ObjectForm;
import broodtide.forms.Placed;
import broodtide.forms.TextForm;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All that files and calendars need to know of one kind of control: the word that stands for it,
 * its fields when a study writes it out with dates, its fields in the library, where it counts from
 * the first day, and what stands against it on a day. What it does to a colony it says itself.
 *
 * @param <C> the control
 */
public abstract class ControlKind<C extends Control> {
  /** Every kind, in the order of the schema. */
  public static final List<ControlKind<?>> ALL =
      List.of(
          new MiticideKind(),
          new DroneCombKind(),
          new QueenCagingKind(),
          new TrappingCombKind(),
          new SplitKind(),
          new RequeeningKind());

  private final String word;
  private final Class<C> type;
  private final String about;

  /**
   * @param word what stands in the field {@code kind}
   * @param type class of the control
   * @param about what it is, for the schema
   */
  ControlKind(String word, Class<C> type, String about) {
    this.word = word;
    this.type = type;
    this.about = about;
  }

  /**
   * {@return the kind of a control}
   *
   * @param control a control on its days
   * @throws IllegalArgumentException when no kind is declared for its class
   */
  public static ControlKind<?> of(Control control) {
    return ALL.stream()
        .filter(kind -> kind.type.isInstance(control))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no kind for " + control));
  }

  /** Fields of a study besides {@code kind}. */
  abstract List<Field<?>> datedFields();

  /** A control of a study. */
  abstract C dated(Fields in);

  /** Writes a control of a study. */
  abstract void writeDated(C control, ObjectForm.Written out);

  /** Fields of the library besides those that all kinds have. */
  abstract List<Field<?>> usualFields();

  /**
   * A control of the library.
   *
   * @param name its short name
   * @param title what people call it
   * @param start the day on which it begins
   */
  abstract C usual(String name, String title, LocalDate start, Fields in);

  /** Writes a control of the library. */
  abstract void writeUsual(C control, ObjectForm.Written out);

  /** The field with the active substance, where the kind has one. */
  Optional<Field<String>> substance() {
    return Optional.empty();
  }

  /** What stands against it in the usual year of a place. */
  List<Obstacle> against(C control, Climate climate) {
    return List.of();
  }

  /** Days to mark in a calendar. */
  List<LocalDate> marked(C control) {
    return List.of(control.from());
  }

  /** Days on which a beekeeper does something to the hive, in order. */
  abstract List<HiveVisit> hands(C control, Handling handling);

  /** Days after the first that a study writes out, by where they stand. */
  Map<Node, LocalDate> laterDays(C control, Placed<Control> written) {
    return Map.of();
  }

  /** {@return what stands in the field {@code kind}} */
  public final String word() {
    return word;
  }

  /** {@return class of the controls of this kind} */
  public final Class<C> type() {
    return type;
  }

  /**
   * {@return what stands against a control in the usual year of a place, whatever the colony does;
   * empty when nothing does}
   *
   * @param control a control of this kind
   * @param climate the year of the place
   */
  public final List<Obstacle> obstacles(Control control, Climate climate) {
    return against(type.cast(control), climate);
  }

  /**
   * {@return days after the first that a study writes out, by where they stand}
   *
   * @param written a control of this kind with its place in the file
   */
  public final Map<Node, LocalDate> daysWithin(Placed<Control> written) {
    return laterDays(type.cast(written.value()), written);
  }

  /** {@return what a mark in a calendar says of it; empty when its name says it} */
  public Optional<String> mark() {
    return Optional.empty();
  }

  /**
   * {@return the days to mark in a calendar}
   *
   * @param control a control of this kind
   */
  public final List<LocalDate> daysToMark(Control control) {
    return marked(type.cast(control));
  }

  /**
   * {@return the days on which a beekeeper does something to the hive, in order, at least one}
   *
   * @param control a control of this kind
   * @param handling what to mind when it is given
   */
  public final List<HiveVisit> visits(Control control, Handling handling) {
    return hands(type.cast(control), handling);
  }

  /** {@return its form in a study, written out with dates} */
  public final KindForm.Kind<Control> inStudy() {
    return KindForm.kind(word, type, about, datedFields(), this::dated, this::writeDated);
  }

  /** Its form in the library. */
  final KindForm.Kind<ControlTemplate> inLibrary() {
    Field<String> kind = KindForm.kindField(word);
    List<Field<?>> fields =
        Stream.of(
                List.<Field<?>>of(kind, ControlTemplateFile.NAME, ControlTemplateFile.TITLE),
                substance().map(List::<Field<?>>of).orElse(List.of()),
                usualFields(),
                ControlTemplateFile.LAST)
            .flatMap(List::stream)
            .toList();
    ObjectForm<ControlTemplate> form =
        new ObjectForm<>(
            word,
            "a control with its usual values, kind " + word,
            fields,
            this::template,
            (template, out) -> {
              out.put(kind, word);
              out.put(ControlTemplateFile.NAME, template.name());
              out.put(ControlTemplateFile.TITLE, template.title());
              substance().ifPresent(f -> template.substance().ifPresent(s -> out.put(f, s)));
              writeUsual(type.cast(template.usual()), out);
              ControlTemplateFile.writeLast(template, out);
            });
    return new KindForm.Kind<>(word, t -> type.isInstance(t.usual()), form);
  }

  private ControlTemplate template(Fields in) {
    String name = in.need(ControlTemplateFile.NAME);
    String title = in.need(ControlTemplateFile.TITLE);
    return new ControlTemplate(
        name,
        title,
        substance().map(in::need),
        usual(name, title, ControlTemplate.FIRST_DAY, in),
        in.find(ControlTemplateFile.EFFICACY),
        in.need(Handling.FIELD),
        in.need(ControlTemplateFile.NOTES),
        in.need(ControlTemplateFile.CAUTIONS));
  }

  /** The field with the name of a control of a study. */
  static Field<String> name(String usual) {
    return Field.optional("name", TextForm.LINE, usual, "what to call it");
  }
}
