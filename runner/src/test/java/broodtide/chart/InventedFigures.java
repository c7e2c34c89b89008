package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Invented figures for each kind of picture: plausible shapes, no model behind them. */
final class InventedFigures {
  private static final String MITES = "mites per 100 adult bees";

  private InventedFigures() {}

  /** Every kind by its name. */
  static Map<String, Figure> all() {
    Map<String, Figure> all = new LinkedHashMap<>();
    all.put("wash", wash());
    all.put("growth", growth(1));
    all.put("growth of four", growth(4));
    all.put("worked", worked());
    all.put("rules", rules());
    all.put("worth", worth());
    all.put("backtest", backtest());
    all.put("posterior", posterior());
    all.put("sensitivity", sensitivity());
    all.put("apiary", apiary());
    all.put("season inside", inside());
    return all;
  }

  static Figure wash() {
    return WashCurve.of(
        new Heading("The colony is almost certainly above the threshold", "7 mites in 300 bees."),
        MITES,
        bell(0, 7, 2.3, 0.8),
        1.5,
        "threshold: 1.5",
        "85 % above it");
  }

  private static DensityCurve bell(double from, double to, double middle, double width) {
    double[] x = IntStream.range(0, 201).mapToDouble(i -> from + (to - from) * i / 200).toArray();
    double[] y = IntStream.range(0, 201).mapToDouble(i -> bell((x[i] - middle) / width)).toArray();
    return DensityCurve.of(x, y);
  }

  private static double bell(double z) {
    return Math.exp(-0.5 * z * z);
  }

  static Figure growth(int hives) {
    List<GrowthPicture.Hive> all = new ArrayList<>();
    LocalDate april = LocalDate.of(2026, 4, 20);
    for (int h = 0; h < hives; h++) {
      double rate = 0.022 + 0.004 * h;
      GrowthPicture.Segment one =
          new GrowthPicture.Segment(
              grown(april, 80, 0.3, rate),
              List.of(),
              "doubles in " + Numerals.two(Math.log(2) / rate) + " days");
      GrowthPicture.Segment two =
          new GrowthPicture.Segment(
              grown(april.plusDays(90), 40, 0.35, rate),
              grown(april.plusDays(130), 30, 0.35 * Math.exp(40 * rate), rate),
              "doubles in " + Numerals.two(Math.log(2) / rate) + " days");
      all.add(
          new GrowthPicture.Hive(
              "Invented " + (h + 1),
              InventedSeason.washes(),
              List.of(one, two),
              List.of(new Marker("thymol", april.plusDays(85))),
              ""));
    }
    return GrowthPicture.of(
        new Heading("Mites double in about a month", "Washes of invented hives."), MITES, all);
  }

  private static List<Estimate> grown(LocalDate from, int days, double start, double rate) {
    List<Estimate> out = new ArrayList<>();
    for (int d = 0; d <= days; d += 5) {
      double m = start * Math.exp(rate * d);
      out.add(Estimate.of(from.plusDays(d), m / 2, m / 1.3, m, m * 1.3, m * 2));
    }
    return out;
  }

  static PriorPosterior.Unknown efficacy() {
    return new PriorPosterior.Unknown(
        "share killed", bell(0, 1, 0.75, 0.2), bell(0, 1, 0.88, 0.05));
  }

  static Figure worked() {
    LocalDate d = LocalDate.of(2026, 6, 1);
    Line with = new Line("with the treatment", "", grown(d.plusDays(45), 60, 0.3, 0.02));
    Line without = new Line("without it", "", grown(d.plusDays(45), 60, 2.8, 0.02));
    return EffectPicture.of(
        new Heading("The treatment killed about 88 % of the mites", "Invented hive."),
        MITES,
        InventedSeason.washes(),
        with,
        without,
        new Marker("formic acid", d.plusDays(44)),
        efficacy());
  }

  static List<RuleTradeoff.Rule> theRules() {
    return List.of(
        rule("no rule", 0, 0.55, 0.55, 0),
        rule("2 with formic-slow", 0.8, 0.21, 0.12, 0.18),
        rule("every August", 1, 0.25, 0.14, 0.4),
        rule("August and December", 2, 0.08, 0.03, 0.55));
  }

  private static RuleTradeoff.Rule rule(
      String name, double t, double loss, double missed, double needless) {
    return new RuleTradeoff.Rule(
        name,
        t,
        new Range(0.9 * t, 1.1 * t),
        loss,
        new Range(0.85 * loss, 1.2 * loss),
        missed,
        needless);
  }

  static Figure rules() {
    return RuleTradeoff.of(
        new Heading("A threshold of 2 loses less than a fixed date", "Invented colonies."),
        theRules());
  }

  static Figure worth() {
    List<WorthPicture.Gain> gains = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      double g = 0.04 * Math.sin(i / 2.0);
      LocalDate d = LocalDate.of(2026, 7, 20).plusDays(7 * i);
      gains.add(new WorthPicture.Gain(d, g, new Range(g - 0.015, g + 0.02)));
    }
    return WorthPicture.of(
        new Heading("A wash in early August is worth most", "Invented hive."),
        "winter losses avoided",
        gains,
        List.of(
            new WorthPicture.Decision(0, 3, "wait"),
            new WorthPicture.Decision(4, 18, "thymol after harvest"),
            new WorthPicture.Decision(19, 60, "formic acid now")));
  }

  static Figure backtest() {
    List<ForecastCheck.Pair> pairs = new ArrayList<>();
    for (int i = 1; i < 14; i++) {
      double f = 0.5 * i + Math.sin(i);
      pairs.add(new ForecastCheck.Pair(f, new Range(Math.max(0, f - 2), f + 3), 0.55 * i));
    }
    return ForecastCheck.of(
        new Heading("Forecasts were a little too high", "13 invented forecasts."),
        pairs,
        new double[] {4, 3, 2, 1, 3},
        List.of(
            new ForecastCheck.Skill("same as last time", 0.32, new Range(0.1, 0.5)),
            new ForecastCheck.Skill("steady growth", -0.05, new Range(-0.2, 0.12))));
  }

  static Figure posterior() {
    List<PriorPosterior.Unknown> all = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double to = Math.pow(10, i - 1);
      all.add(
          new PriorPosterior.Unknown(
              "unknown " + (i + 1),
              bell(0, to, 0.4 * to, 0.25 * to),
              bell(0, to, 0.6 * to, 0.08 * to)));
    }
    return PriorPosterior.of(
        new Heading("The washes say much about some unknowns", "Invented hive."), all);
  }

  static Figure sensitivity() {
    return SensitivityBars.of(
        new Heading("The start matters most", "Invented shares."),
        "share of the spread of the answer",
        List.of(
            new SensitivityBars.Index(
                "mites at the start", 0.48, new Range(0.42, 0.55), 0.4, new Range(0.3, 0.5)),
            new SensitivityBars.Index(
                "mites from outside", 0.02, new Range(-0.03, 0.08), 0.4, new Range(0.3, 0.5)),
            new SensitivityBars.Index(
                "how fast the mites breed",
                0.27,
                new Range(0.21, 0.33),
                0.4,
                new Range(0.3, 0.5))));
  }

  static Figure apiary() {
    List<ApiaryDots.Hive> hives = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      double v = i == 7 ? 0 : 6 / (1.0 + i);
      hives.add(
          new ApiaryDots.Hive(
              "Invented " + (i + 1),
              List.of(
                  new ApiaryDots.Dot(v, new Range(0.4 * v, 2 * v + 0.3)),
                  new ApiaryDots.Dot(3 * v, new Range(v, 9 * v + 0.5)))));
    }
    return ApiaryDots.of(
        new Heading("Two of nine hives stand above the threshold", "Invented apiary."),
        MITES,
        List.of("today", "30 Sep if you wait"),
        hives,
        2.5,
        "threshold: 2.5 per 100");
  }

  static Figure inside() {
    int n = 330;
    double[] adults = new double[n];
    double[] worker = new double[n];
    double[] drone = new double[n];
    double[] bees = new double[n];
    double[] winter = new double[n];
    double[] sick = new double[n];
    for (int i = 0; i < n; i++) {
      double brood = 0.75 * bell((i - 110) / 80.0);
      drone[i] = 0.25 * brood * bell((i - 60) / 30.0);
      worker[i] = brood - drone[i];
      adults[i] = 1 - brood;
      sick[i] = 0.07 * bell((i - 200) / 50.0);
      bees[i] = 8000 + 24000 * bell((i - 100) / 70.0);
      winter[i] = bees[i] * Math.max(0, Math.min(1, (i - 130) / 80.0));
    }
    return SeasonInside.of(
        new Heading("In summer most mites sit in the brood", "Of each 100 mites, where they are."),
        InventedSeason.START,
        new SeasonInside.Stack(
            "of 100 mites",
            true,
            List.of(
                new SeasonInside.State("on adult bees", adults),
                new SeasonInside.State("in worker cells", worker),
                new SeasonInside.State("in drone cells", drone))),
        new SeasonInside.Ribbon("adult bees", bees, "winter bees", winter),
        new SeasonInside.Stack(
            "of 100 adult bees",
            false,
            List.of(
                new SeasonInside.State("since emergence", sick),
                new SeasonInside.State("as adults", drone))));
  }
}
