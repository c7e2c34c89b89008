package broodtide.report;

import broodtide.assessment.ApiarySheet;
import broodtide.assessment.CountSheet;
import broodtide.assessment.Decision;
import broodtide.assessment.QuantileSummary;
import broodtide.chart.ApiaryDots;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.Range;
import broodtide.terminal.Terminal;
import broodtide.wash.ThresholdSet;
import broodtide.words.Plain;
import java.util.List;

/** The picture beside the sheet of an apiary: where each hive stands, and where it will. */
public final class ApiaryPicture {
  /** Letters of a name that there is room for. */
  private static final int NAME = 28;

  private ApiaryPicture() {}

  /**
   * {@return a dot with its interval for each hive, today and on the day that is judged}
   *
   * @param sheet the apiary
   * @param thresholds the set that its hives are held to
   */
  public static Figure of(ApiarySheet sheet, ThresholdSet thresholds) {
    List<ApiaryDots.Hive> hives =
        sheet.rows().stream()
            .map(
                row ->
                    new ApiaryDots.Hive(
                        Terminal.cut(row.hive(), NAME),
                        List.of(dot(row.infestation()), dot(row.judged()))))
            .toList();
    boolean known = sheet.threshold().isPresent();
    return ApiaryDots.of(
        new Heading(
            "Mites of each hive today, and on " + Plain.day(sheet.judgedOn()) + " if you wait",
            "The most urgent hive first. Upper dot: today. Lower dot: "
                + Plain.day(sheet.judgedOn())
                + ", if you wait."),
        "mites per 100 adult bees",
        List.of("today", Plain.shortDay(sheet.judgedOn()) + " if you wait"),
        hives,
        known ? Decision.infestationAt(sheet.threshold().getAsDouble()) : null,
        known ? "threshold today: " + Plain.inWash(sheet.threshold().getAsDouble()) : "");
  }

  /**
   * {@return a dot with its interval for each count}
   *
   * @param sheet counts of one day
   */
  public static Figure of(CountSheet sheet) {
    List<ApiaryDots.Hive> hives =
        sheet.rows().stream()
            .map(
                r ->
                    new ApiaryDots.Hive(
                        Terminal.cut(r.wash().colony(), NAME),
                        List.of(
                            new ApiaryDots.Dot(
                                r.wash().perHundred(),
                                new Range(r.exact().low(), r.exact().high())))))
            .toList();
    boolean known = sheet.threshold().isPresent();
    return ApiaryDots.of(
        new Heading(
            "Counts of " + Plain.day(sheet.date()), "The hive likeliest over the threshold first."),
        "mites counted per 100 bees",
        List.of("counted"),
        hives,
        known ? sheet.threshold().getAsDouble() : null,
        "threshold: " + sheet.thresholds().name());
  }

  private static ApiaryDots.Dot dot(QuantileSummary s) {
    return new ApiaryDots.Dot(s.median(), new Range(s.q05(), s.q95()));
  }
}
