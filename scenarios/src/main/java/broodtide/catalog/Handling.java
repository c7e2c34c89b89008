package broodtide.catalog;

import broodtide.forms.Field;
import broodtide.forms.ObjectForm;
import broodtide.forms.TruthForm;
import java.util.List;

/**
 * What hands have to do with a control beyond what it does to mites. Immutable.
 *
 * @param acid whether it is an acid that burns skin, eyes and lungs
 * @param takenOut whether something stays in the hive that has to come out again
 */
public record Handling(boolean acid, boolean takenOut) {
  /** Neither an acid nor anything to take out. */
  public static final Handling PLAIN = new Handling(false, false);

  private static final Field<Boolean> ACID =
      Field.optional(
          "acid", new TruthForm(), false, "whether it is an acid that burns skin, eyes and lungs");
  private static final Field<Boolean> TAKEN_OUT =
      Field.optional(
          "takenOut",
          new TruthForm(),
          false,
          "whether something stays in the hive that has to come out again");

  static final Field<Handling> FIELD =
      Field.optional(
          "handling",
          new ObjectForm<>(
              "handling",
              "what to mind when it is given",
              List.of(ACID, TAKEN_OUT),
              in -> new Handling(in.need(ACID), in.need(TAKEN_OUT)),
              (handling, out) -> {
                out.put(ACID, handling.acid());
                out.put(TAKEN_OUT, handling.takenOut());
              }),
          PLAIN,
          "what to mind when it is given");
}
