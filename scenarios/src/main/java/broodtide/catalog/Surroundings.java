package broodtide.catalog;

import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;

/** How many colonies stand near enough to bring mites, in words. */
public enum Surroundings {
  /** No mite arrives. */
  ISOLATED,
  /** Few colonies around. */
  SPARSE,
  /** Many colonies around. */
  DENSE;

  /**
   * June to November: Frey & Rosenkranz 2014 counted from July to November, Greatti et al. 1992
   * from June to early August, 1.6 to 13.7 a day. From August on it is {@link Immigration#LATE}.
   */
  private static final YearSpan EARLY = new YearSpan(MonthDay.of(6, 1), MonthDay.of(7, 31));

  /** {@return the word that files use} */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * {@return the mites that arrive, north of the equator}
   *
   * @param assumptions says how many mites arrive
   */
  public Immigration immigration(Assumptions assumptions) {
    return switch (this) {
      case ISOLATED -> Immigration.NONE;
      case SPARSE -> over(assumptions.sparseArrivals(), assumptions);
      case DENSE -> over(assumptions.denseArrivals(), assumptions);
    };
  }

  private static Immigration over(double perDay, Assumptions assumptions) {
    return new Immigration(
        List.of(
            new Immigration.Window(EARLY, perDay),
            new Immigration.Window(Immigration.LATE, perDay * assumptions.lateArrivals())));
  }
}
