package broodtide.catalog;

import broodtide.forms.BadInput;
import broodtide.forms.CurveForm;
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
import broodtide.season.Climate;
import broodtide.season.Curve;
import broodtide.season.YearSpan;
import java.util.List;

/**
 * Climates as JSON. Curves are knots over the year as it runs north of the equator; a study says
 * whether its place lies south.
 */
public final class ClimateFile {
  private static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "short name, for example cool-maritime");
  private static final Field<String> TITLE =
      Field.required("title", TextForm.LINE, "one line for people");

  /** Eggs that an average queen could lay, eggs/day. */
  public static final Field<Curve> LAYING =
      Field.required(
          "laying",
          CurveForm.of(0, 4000, "eggs/day"),
          "what an average queen could lay in a colony without limits on nursing");

  /** Share of eggs laid in drone cells. */
  public static final Field<Curve> DRONE_SHARE =
      Field.required("droneShare", CurveForm.of(0, 0.5, "1"), "share of eggs laid in drone cells");

  /** Share of emerging workers that become winter bees. */
  public static final Field<Curve> WINTER_SHARE =
      Field.required(
          "winterShare",
          CurveForm.of(0, 1, "1"),
          "share of emerging workers that become long-lived winter bees");

  /** How far winter bees are called to work, 0 to 1. */
  public static final Field<Curve> SPRING_RELEASE =
      Field.required(
          "springRelease",
          CurveForm.of(0, 1, "1"),
          "how far winter bees are called to work, 0 not at all to 1 all of them");

  /** Death rate of winter bees, 1/day. */
  public static final Field<Double> WINTER_DEATH =
      Field.optional(
          "winterDeath",
          NumberForm.of(0.0005, 0.05, "1/day"),
          "death rate of winter bees; 0.0025 when left out");

  /** Mean of the daily highs, degrees Celsius. */
  public static final Field<Curve> WARMTH =
      Field.required("warmth", CurveForm.of(-60, 60, "degrees Celsius"), "mean of the daily highs");

  private static final Field<YearSpan> SUPERS =
      Field.required("supers", new SpanForm(), "when supers are usually on the hive");
  private static final Field<YearSpan> WINTER_BEES =
      Field.required(
          "winterBees", new SpanForm(), "when the brood that will winter is usually reared");
  private static final Field<List<String>> SOURCES =
      Field.required(
          "sources",
          new ListForm<>(TextForm.NOTE, 1, 50),
          "where the curves come from; each line names a source or says \"choice\"");

  /** The form of a climate, for the reader, the writer and the schema. */
  public static final ObjectForm<Climate> FORM =
      new ObjectForm<>(
          "climate",
          "a climate: the year of a colony as a place sets it, written for the northern hemisphere",
          List.of(
              NAME,
              TITLE,
              LAYING,
              DRONE_SHARE,
              WINTER_SHARE,
              SPRING_RELEASE,
              WINTER_DEATH,
              WARMTH,
              SUPERS,
              WINTER_BEES,
              SOURCES),
          ClimateFile::make,
          ClimateFile::spell);

  private ClimateFile() {}

  /**
   * Reads a climate.
   *
   * @param source where the text comes from; its name appears in every fault
   * @return the climate
   * @throws BadInput with every fault there is
   */
  public static Climate read(Source source) {
    return Reading.whole(source, FORM);
  }

  /**
   * {@return a climate as the text of a file}
   *
   * @param climate a climate as it was read, not one turned south
   */
  public static String write(Climate climate) {
    if (climate.southern()) {
      throw new IllegalArgumentException(
          "climates are written as they run in the north; write the one it was made from");
    }
    return NeatJson.text(FORM.write(climate));
  }

  private static Climate make(Fields in) {
    return new Climate(
        in.need(NAME),
        in.need(TITLE),
        in.need(LAYING),
        in.need(DRONE_SHARE),
        in.need(WINTER_SHARE),
        in.need(SPRING_RELEASE),
        in.find(WINTER_DEATH).orElse(Climate.USUAL_WINTER_DEATH),
        in.need(WARMTH),
        in.need(SUPERS),
        in.need(WINTER_BEES),
        false,
        in.need(SOURCES));
  }

  private static void spell(Climate c, ObjectForm.Written out) {
    out.put(NAME, c.name());
    out.put(TITLE, c.title());
    out.put(LAYING, c.laying());
    out.put(DRONE_SHARE, c.droneShare());
    out.put(WINTER_SHARE, c.winterShare());
    out.put(SPRING_RELEASE, c.springRelease());
    out.put(WINTER_DEATH, c.winterDeath());
    out.put(WARMTH, c.warmth());
    out.put(SUPERS, c.supers());
    out.put(WINTER_BEES, c.winterBees());
    out.put(SOURCES, c.sources());
  }
}
