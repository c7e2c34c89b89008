package broodtide.study;

import broodtide.catalog.Assumptions;
import broodtide.catalog.ControlFields;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.mite.StockTraits;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The colony of a study as JSON. */
final class ColonyForm {
  static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "the colony's name, as the file of washes calls it");
  static final Field<Double> ADULTS =
      Field.optional(
          "adults",
          NumberForm.of(ColonyStart.FEWEST, ColonyStart.MOST, "bees"),
          "adult bees on the first day; the climate's standard year when neither this nor"
              + " framesOfBees is given");
  static final Field<Double> FRAMES =
      Field.optional(
          "framesOfBees",
          NumberForm.of(0.1, 60, "frames"),
          "instead of adults: standard deep frames covered with bees on both sides, "
              + NumberForm.plain(Assumptions.usual().beesPerFrame())
              + " bees each");
  static final Field<Double> INFESTATION =
      Field.optional(
          "infestation",
          NumberForm.of(0, 300, "mites per 100 adult bees"),
          "mites on adult bees on the first day, as a wash would show on average; may be left out"
              + " when there are washes to tell");
  static final Field<String> YARD =
      Field.optional(
          "yard",
          TextForm.LINE,
          "the yard in which it stands; colonies of a yard share a part of their season");
  static final Field<Double> STRENGTH = Field.of(ColonyStart.class, "strength");

  static final ObjectForm<ColonyStart> FORM =
      new ObjectForm<>(
          "colony",
          "the colony on the first day",
          List.of(
              NAME,
              YARD,
              ADULTS,
              FRAMES,
              INFESTATION,
              STRENGTH,
              ControlFields.HYGIENE,
              ControlFields.VIGOUR),
          ColonyForm::make,
          ColonyForm::spell);

  private ColonyForm() {}

  private static ColonyStart make(Fields in) {
    return new ColonyStart(
        in.need(NAME),
        number(in.find(ADULTS)),
        number(in.find(FRAMES)),
        number(in.find(INFESTATION)),
        in.need(STRENGTH),
        new StockTraits(in.need(ControlFields.HYGIENE), in.need(ControlFields.VIGOUR)),
        in.find(YARD).orElse(""));
  }

  private static void spell(ColonyStart c, ObjectForm.Written out) {
    out.put(NAME, c.name());
    if (!c.yard().isEmpty()) {
      out.put(YARD, c.yard());
    }
    c.adults().ifPresent(v -> out.put(ADULTS, v));
    c.framesOfBees().ifPresent(v -> out.put(FRAMES, v));
    c.infestation().ifPresent(v -> out.put(INFESTATION, v));
    out.put(STRENGTH, c.strength());
    out.put(ControlFields.HYGIENE, c.stock().hygiene());
    out.put(ControlFields.VIGOUR, c.stock().vigour());
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }
}
