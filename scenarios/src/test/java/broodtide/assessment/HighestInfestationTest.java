package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.Unknown;
import broodtide.mite.Immigration;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import broodtide.pages.MarkdownTable;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * How far the mites of untreated colonies climb in the year after 1 August: the median of living
 * colonies, day by day, as every answer shows it. Colonies differ as they are believed to, count as
 * much as they are likely to be alive, and none is taken out; nothing is cut off.
 */
@Tag("outside")
public class HighestInfestationTest {
  private static final LocalDate START = LocalDate.of(2001, 8, 1);
  private static final LocalDate LAST = START.plusDays(365);
  private static final int COLONIES = 256;
  private static final String SOURCE =
      "highest mean on Gotland about 47, Fries et al. 2006, Apidologie 37:564. From"
          + " memory: highest wash of others about 55, means 40 to 47, one teaching figure 76";

  public static Stream<Check> checks() {
    return Stream.of(
        under("boreal", 60),
        under("cold-continental", 60),
        under("cool-maritime", 60),
        under("mild-maritime", 60),
        under("temperate", 60),
        under("warm-temperate", 70));
  }

  private static Check under(String climate, double most) {
    return Check.within(
        "highest median of living colonies from up to 3 per 100 on 1 August, " + climate,
        "about 55; under " + Figures.of(most, 2) + " by choice",
        0,
        most,
        SOURCE,
        () -> DoubleStream.of(0.1, 0.5, 1, 2, 3).map(z -> highest(climate, z)).max().orElseThrow());
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  /** Infestation by month from several starts, and the highest, as they come. */
  public static String table() {
    MarkdownTable out =
        new MarkdownTable(
            "climate",
            "1 August:",
            "1 September:",
            "1 October:",
            "1 November:",
            "1 December:",
            "1 January:",
            "highest:",
            "bees 1 December:");
    for (Check check : checks().toList()) {
      String climate = check.what().substring(check.what().lastIndexOf(' ') + 1);
      for (double start : new double[] {1, 3, 5, 7}) {
        PlanRun run = year(climate, start);
        String[] cells = new String[9];
        cells[0] = climate;
        cells[1] = Figures.of(start, 2);
        for (int m = 1; m <= 5; m++) {
          cells[m + 1] = Figures.of(run.on(Quantity.INFESTATION, START.plusMonths(m)).median(), 2);
        }
        cells[7] = Figures.of(highest(run), 2);
        cells[8] = Figures.of(run.on(Quantity.ADULTS, LocalDate.of(2001, 12, 1)).median(), 2);
        out.row(cells);
      }
    }
    return out.toString();
  }

  private static double highest(String climate, double start) {
    return highest(year(climate, start));
  }

  private static double highest(PlanRun run) {
    return START
        .datesUntil(LAST.plusDays(1))
        .mapToDouble(day -> run.on(Quantity.INFESTATION, day).median())
        .max()
        .orElseThrow();
  }

  private static PlanRun year(String climate, double start) {
    YearSpan season = new YearSpan(MonthDay.of(6, 1), MonthDay.of(11, 30));
    Immigration sparse = new Immigration(List.of(new Immigration.Window(season, 1.27)));
    Prior exactly = Priors.defaults().of(Unknown.INFESTATION).with(start, 0);
    ColonyCase c =
        new ColonyCase(
            "untreated",
            Shipped.model(climate).with(sparse),
            START,
            START,
            LAST,
            List.of(),
            List.of(),
            Catalog.threshold(Catalog.USUAL_THRESHOLD),
            Priors.defaults().with(Unknown.INFESTATION, exactly));
    try (Workers workers = new Workers(1)) {
      SeasonPosterior colonies =
          c.posterior(new SeasonPosterior.SamplerSettings(COLONIES, 1, 1), workers, Progress.NONE);
      return Comparison.of(c, colonies, List.of(Plan.waiting("left alone")), workers, Progress.NONE)
          .runs()
          .get(0);
    }
  }
}
