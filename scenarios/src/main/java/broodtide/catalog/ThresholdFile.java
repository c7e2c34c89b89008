package broodtide.catalog;

import broodtide.forms.BadInput;
import broodtide.forms.ChoiceForm;
import broodtide.forms.Fault;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ListForm;
import broodtide.forms.NeatJson;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.Reading;
import broodtide.forms.Source;
import broodtide.forms.SpanForm;
import broodtide.forms.TextForm;
import broodtide.forms.WholeForm;
import broodtide.measure.Tag;
import broodtide.season.YearSpan;
import broodtide.wash.Stage;
import broodtide.wash.Threshold;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sets of treatment thresholds as JSON, and single figures in their place. */
public final class ThresholdFile {
  private static final int MOST_MITES = 1000;
  private static final Pattern FIGURE =
      Pattern.compile("(\\d{1,4}(?:\\.\\d{1,6})?)(?:/(\\d{1,4}))?");

  /** What stands beside the names of the shelf, for messages. */
  static final String FIGURES = "a figure such as 3 (mites per 100 bees) or 9/300";

  private static final Field<Stage> STAGE =
      Field.optional(
          "stage",
          ChoiceForm.of(List.of(Stage.values()), Stage::id),
          "the stage of the year in which it holds");
  private static final Field<YearSpan> DAYS =
      Field.optional(
          "days", new SpanForm(), "the days on which it holds, as they are north of the equator");
  private static final Field<Double> MITES =
      Field.required(
          "mites",
          NumberForm.of(0.01, MOST_MITES, "mites"),
          "infestation at which the source advises to act");
  private static final Field<Double> UP_TO =
      Field.optional(
          "upTo",
          NumberForm.of(0.01, MOST_MITES, "mites"),
          "upper end where the source gives a range");
  private static final Field<Double> FALL =
      Field.optional(
          "dailyFall",
          NumberForm.of(0.01, MOST_MITES, "mites a day"),
          "mites that fall on a board in a day above which the source advises to act");
  private static final Field<String> NOTE =
      Field.optional("note", TextForm.NOTE, "how the figure of the source was taken over");

  private static final ObjectForm<Threshold> THRESHOLD =
      new ObjectForm<>(
          "threshold",
          "a treatment threshold for a part of the year",
          List.of(STAGE, DAYS, MITES, UP_TO, FALL, NOTE),
          in ->
              new Threshold(
                  in.find(STAGE).orElse(null),
                  in.find(DAYS).orElse(null),
                  in.need(MITES),
                  in.find(UP_TO).orElse(null),
                  in.find(FALL).orElse(null),
                  in.find(NOTE).orElse(null)),
          ThresholdFile::spell);

  private static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "short name: author or body, and year");
  private static final Field<String> TITLE =
      Field.required("title", TextForm.LINE, "one line for people");
  private static final Field<String> REGION =
      Field.required("region", TextForm.LINE, "where the thresholds were found");
  private static final Field<String> SOURCE = Field.required("source", TextForm.NOTE, "citation");
  private static final Field<Tag> TAG =
      Field.required(
          "tag",
          ChoiceForm.of(List.of(Tag.values()), tag -> tag.name().toLowerCase(Locale.ROOT)),
          "how the thresholds are known");
  private static final Field<String> CAUTION =
      Field.optional("caution", TextForm.NOTE, "what to mind when the set is chosen");
  private static final Field<Integer> PER_BEES =
      Field.required(
          "perBees", new WholeForm(1, Wash.MOST_BEES, "bees"), "the bees that mites are per");
  private static final Field<List<Threshold>> THRESHOLDS =
      Field.required(
          "thresholds", new ListForm<>(THRESHOLD, 1, 366), "thresholds through the year");

  private static final ObjectForm<ThresholdSet> FORM =
      new ObjectForm<>(
              "thresholds",
              "treatment thresholds through the year, as one source gives them",
              List.of(NAME, TITLE, REGION, SOURCE, TAG, CAUTION, PER_BEES, THRESHOLDS),
              ThresholdFile::make,
              ThresholdFile::spell)
          .replaced(
              Map.of(
                  "limits",
                  "the field is called \"thresholds\" now; change the name on this line"));

  private ThresholdFile() {}

  /**
   * Reads a set of treatment thresholds.
   *
   * @param source where the text comes from; its name appears in every fault
   * @return the set
   * @throws BadInput with every fault there is
   */
  public static ThresholdSet read(Source source) {
    return Reading.whole(source, FORM);
  }

  /**
   * {@return a set of treatment thresholds as the text of a file}
   *
   * @param set a set as it was read
   */
  public static String write(ThresholdSet set) {
    return NeatJson.text(FORM.write(set));
  }

  /**
   * {@return one threshold for every day, when a text is a figure}
   *
   * @param text what a user wrote
   * @throws BadInput when the figure lies outside its range; a beekeeper does not name more than
   *     one mite for each bee
   */
  static Optional<ThresholdSet> figure(String text) {
    Matcher figure = FIGURE.matcher(text);
    if (!figure.matches()) {
      return Optional.empty();
    }
    double mites = Double.parseDouble(figure.group(1));
    int bees = figure.group(2) == null ? 100 : Integer.parseInt(figure.group(2));
    if (mites < 0.01 || mites > Math.min(bees, MOST_MITES) || bees < 1 || bees > Wash.MOST_BEES) {
      String message =
          "expected a figure of 0.01 to 100 mites per 100 bees, such as 3, or up to "
              + MOST_MITES
              + " mites, and no more than bees, in up to "
              + Wash.MOST_BEES
              + " bees, such as 9/300";
      throw BadInput.of(new Fault("threshold", 0, 0, "", text, message));
    }
    return Optional.of(ThresholdSet.given(text, mites, bees));
  }

  private static ThresholdSet make(Fields in) {
    return new ThresholdSet(
        in.need(NAME),
        in.need(TITLE),
        in.need(REGION),
        in.need(SOURCE),
        in.need(TAG),
        in.find(CAUTION),
        in.need(PER_BEES),
        in.need(THRESHOLDS));
  }

  private static void spell(ThresholdSet set, ObjectForm.Written out) {
    out.put(NAME, set.name());
    out.put(TITLE, set.title());
    out.put(REGION, set.region());
    out.put(SOURCE, set.source());
    out.put(TAG, set.tag());
    set.caution().ifPresent(caution -> out.put(CAUTION, caution));
    out.put(PER_BEES, set.perBees());
    out.put(THRESHOLDS, set.thresholds());
  }

  private static void spell(Threshold threshold, ObjectForm.Written out) {
    Optional.ofNullable(threshold.stage()).ifPresent(stage -> out.put(STAGE, stage));
    Optional.ofNullable(threshold.days()).ifPresent(days -> out.put(DAYS, days));
    out.put(MITES, threshold.mites());
    Optional.ofNullable(threshold.upTo()).ifPresent(end -> out.put(UP_TO, end));
    Optional.ofNullable(threshold.fall()).ifPresent(fall -> out.put(FALL, fall));
    Optional.ofNullable(threshold.note()).ifPresent(note -> out.put(NOTE, note));
  }
}
