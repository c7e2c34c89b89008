package broodtide.assessment;

import broodtide.pages.Check;
import broodtide.pages.Figures;
import broodtide.pages.MarkdownTable;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The late season as published, as the prototype had it, and as the program has it. */
final class LateSeasonTable {
  private LateSeasonTable() {}

  /** Markdown. */
  static String text() {
    MarkdownTable out = new MarkdownTable("figure", "published", "prototype", "program");
    Stream.of(
            SurvivalInGeorgiaTest.rows(),
            List.of(vermont()),
            LateLossesTest.rows(),
            List.of(
                row(
                    "mites multiply in a year: boreal, cool-maritime, warm-temperate",
                    "8.2-24.6, 32-64, about 300",
                    "9.6, 34, 341",
                    YearlyGrowthTest.checks(),
                    "mites multiply in a year",
                    2),
                row(
                    "share of mites lost over winter, boreal",
                    ".40",
                    ".46",
                    YearlyGrowthTest.checks(),
                    "share of mites lost",
                    2),
                row(
                    "bees on 25 September, cool-maritime",
                    "13,000",
                    "15,372",
                    ColonySizeTest.checks(),
                    "adult bees on 25 September, cool-maritime",
                    3),
                row(
                    "bees on 5 March as a share of those on 31 October, cool-maritime",
                    ".70",
                    ".69",
                    WinterBeesTest.checks(),
                    "bees on 5 March as a share of those on 31 October, cool-maritime",
                    2),
                row(
                    "bees on 15 March, cold-continental",
                    "13,274",
                    "12,858",
                    ColonySizeTest.checks(),
                    "adult bees on 15 March, cold-continental",
                    3),
                row(
                    "months from .25 to 3 per 100 from five winter and spring days, subtropical",
                    "4 to 5",
                    "148 and 116 days",
                    SeasonsInFloridaTest.checks().limit(6),
                    "months from",
                    2),
                row(
                    "the same from five summer and autumn days, subtropical",
                    "under 3",
                    "78 and 76 days",
                    SeasonsInFloridaTest.checks().skip(6),
                    "months from",
                    2),
                row(
                    "growth of washes a day in early summer, warm-temperate",
                    ".0247",
                    ".0294",
                    SplitsInAlabamaTest.checks(),
                    "growth of washes a day in May and June",
                    3)))
        .flatMap(List::stream)
        .forEach(r -> out.row(r.figure(), r.published(), r.prototype(), r.program()));
    return out.toString();
  }

  private static SideBySide vermont() {
    double[] shares =
        WinterLossesTest.checks().limit(5).mapToDouble(c -> c.measured().getAsDouble()).toArray();
    return new SideBySide(
        "Vermont 2021 (from memory, no author known), alive in spring by late-September"
            + " wash per 100: under 1, 1 to 3, 3 to 6, 6 to 12, 12 or more",
        ".83 .67 .55 .38 0",
        ".82 .80 .75 .63 .11",
        SideBySide.shares(shares));
  }

  private static SideBySide row(
      String figure,
      String published,
      String prototype,
      Stream<Check> checks,
      String what,
      int digits) {
    String program =
        checks
            .filter(c -> c.what().startsWith(what))
            .map(c -> Figures.of(c.measured().getAsDouble(), digits))
            .map(f -> f.replaceFirst("^0\\.", "."))
            .collect(Collectors.joining(", "));
    return new SideBySide(figure, published, prototype, program);
  }
}
