package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.BoardCount;
import broodtide.wash.Frame;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A bank of 512 seasons beside the same seasons played and weighed one by one. */
class SeasonBankByHandTest {
  private static final SamplerSettings EFFORT = new SamplerSettings(64, 1, 9);
  private static final Scenario PAST = Invented.season(60, Invented.strips(10));
  private static final Priors PRIORS = Priors.defaults();

  private static final ParticleLayout LAYOUT = ParticleLayout.of(SeasonPosterior.courses(PAST), 1);

  private static SeasonPosterior read(Scenario past, List<Wash> washes) {
    try (Workers workers = new Workers(1)) {
      return read(bank(past, workers), past, washes, workers);
    }
  }

  private static SeasonPosterior read(
      SeasonBank bank, Scenario past, List<Wash> washes, Workers workers) {
    return bank.posterior(past, washes, EFFORT, workers, Progress.NONE);
  }

  /** Whether colonies were drawn from the bank: a sampler moves them, and some moves fail. */
  private static boolean drawn(SeasonPosterior posterior) {
    return posterior.sample().acceptance() == 1;
  }

  private static SeasonBank bank(Scenario past, Workers workers) {
    return new SeasonBank(SeasonBank.Beginning.of(past, PRIORS, EFFORT), past, workers);
  }

  /** Eight seasons for each colony, from the priors. */
  private static double[][] seasons() {
    return new TemperedSampler(LAYOUT.sampled(), 8 * 64, 1, 9).prior();
  }

  private static EnsembleRun played(double[][] z) {
    BeeYears years = BeeYears.of(PAST, PAST.start().plusDays(PAST.days()));
    List<SimulatedColony> colonies =
        Arrays.stream(z).map(row -> PRIORS.draw(row, LAYOUT).colony(years)).toList();
    try (Workers workers = new Workers(1)) {
      return EnsembleRun.of(
          PAST,
          StandardColony.on(PAST.model(), PAST.start()).about(),
          colonies,
          Watched.daily(Set.of(Quantity.INFESTATION, Quantity.ADULTS)),
          workers,
          Progress.NONE);
    }
  }

  /** So many bees that some colonies cannot have given them, and a note of frames. */
  private static Wash large(int day) {
    return new Wash(
        Invented.START.plusDays(day),
        "A",
        200,
        OptionalInt.of(10_000),
        WashMethod.ALCOHOL,
        Frame.MIXED,
        "",
        OptionalDouble.of(8));
  }

  @Test
  void seasonsWeighByTheirLikelihood() {
    List<Wash> washes = List.of(large(0), Invented.wash(5, 5, 300), Invented.wash(45, 4, 280));
    double[][] z = seasons();
    EnsembleRun run = played(z);
    double[] weights = weights(washes, z, run);
    assertThat(Arrays.stream(weights).filter(w -> w == 0).count())
        .as("too small for so many bees")
        .isBetween(1L, 400L);
    double sum = Arrays.stream(weights).sum();
    double effective = effective(weights);
    int[] picked = picked(Arrays.stream(weights).map(w -> w / sum).toArray());
    SeasonPosterior found = read(PAST, washes);
    TemperedSampler.Sample sample = found.sample();
    assertThat(sample.logEvidence()).isCloseTo(Math.log(sum / 512), within(1e-9));
    double repeats = 0;
    for (int i : picked) {
      repeats += Arrays.stream(picked).filter(j -> j == i).count();
    }
    double distinct = 64 * 64 / repeats;
    assertThat(distinct).as("some are drawn twice").isLessThan(63);
    assertThat(sample.effectiveSize()).isCloseTo(Math.min(effective, distinct), within(1e-6));
    ParticleLayout wanted = SeasonPosterior.layout(PAST, washes.get(2).date());
    for (int i = 0; i < 64; i++) {
      for (int d = 0; d < wanted.sampled(); d++) {
        int place = LAYOUT.places().indexOf(wanted.places().get(d));
        assertThat(sample.z()[i][d]).isEqualTo(z[picked[i]][place]);
      }
    }
    // the colonies of the posterior stand on the first day as those of the bank do
    try (Workers workers = new Workers(1)) {
      double[] infestation =
          found
              .run(PAST, Set.of(Quantity.INFESTATION), workers, Progress.NONE)
              .values(Quantity.INFESTATION, PAST.start());
      double[] all = run.values(Quantity.INFESTATION, PAST.start());
      assertThat(infestation)
          .containsExactly(IntStream.of(picked).mapToDouble(i -> all[i]).toArray());
    }
  }

  private static double[] weights(List<Wash> washes, double[][] z, EnsembleRun run) {
    double[] dispersions = SeasonPosterior.dispersions(PRIORS, LAYOUT, z);
    double[] weights = new double[z.length];
    for (int i = 0; i < z.length; i++) {
      double log = 0;
      for (Wash w : washes) {
        double adults = run.values(Quantity.ADULTS, w.date())[i];
        double infestation = run.values(Quantity.INFESTATION, w.date())[i] / 100;
        log +=
            adults < w.beesOrAssumed()
                ? Double.NEGATIVE_INFINITY
                : new WashModel(w).logLikelihood(infestation, dispersions[i])
                    + StrengthNote.of(w).logLikelihood(adults);
      }
      weights[i] = Math.exp(log);
    }
    return weights;
  }

  private static double effective(double[] weights) {
    double sum = Arrays.stream(weights).sum();
    return sum * sum / Arrays.stream(weights).map(w -> w * w).sum();
  }

  /** Drawn by weight, then shuffled by exchanging each with one before it. */
  private static int[] picked(double[] weights) {
    SplittableRandom random = Streams.of(9, Streams.Purpose.RESAMPLE);
    int[] picked = TemperedSampler.resample(weights, 64, random);
    for (int i = 63; i > 0; i--) {
      int other = random.nextInt(i + 1);
      int kept = picked[i];
      picked[i] = picked[other];
      picked[other] = kept;
    }
    return picked;
  }

  /** A quarter of the 64 colonies asked for is enough. */
  @ParameterizedTest
  @CsvSource({"1, 80, 5.3", "10, 40, 15.8", "40, 20, 18.6", "1, 5, 118.5"})
  void seasonsMustBeEnough(int first, int last, double effective) {
    List<Wash> washes = List.of(Invented.wash(5, first, 300), Invented.wash(45, last, 300));
    double[][] z = seasons();
    assertThat(effective(weights(washes, z, played(z)))).isCloseTo(effective, within(0.1));
    assertThat(drawn(read(PAST, washes))).isEqualTo(effective >= 16);
  }

  @Test
  void fromTooFewSeasonsASamplerGoesOn() {
    List<Wash> steep = List.of(Invented.wash(5, 200, 300), Invented.wash(30, 0, 300));
    assertThat(drawn(read(PAST, steep))).isFalse();
    Wash none =
        new Wash(
            Invented.START,
            "A",
            1,
            OptionalInt.of(10_000),
            WashMethod.ALCOHOL,
            Frame.MIXED,
            "",
            OptionalDouble.empty());
    List<Wash> sure = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      sure.add(none);
    }
    double[] adults = played(seasons()).values(Quantity.ADULTS, Invented.START);
    assertThat(Arrays.stream(adults).max().orElseThrow()).isGreaterThan(10_000);
    assertThat(drawn(read(PAST, sure))).isFalse();
  }

  private static List<Wash> days(int from, int to) {
    return IntStream.rangeClosed(from, to).mapToObj(d -> Invented.wash(d, 2, 300)).toList();
  }

  /** Figures of some days are kept, and let go where they are too many; nobody notices. */
  @Test
  void recordsOfManyDaysAreReadAsIfAlone() {
    Scenario past = Invented.season(60);
    List<List<Wash>> records =
        List.of(
            List.of(Invented.wash(1, 3, 300), Invented.wash(20, 4, 300)),
            List.of(Invented.wash(20, 4, 300), Invented.wash(41, 5, 300)));
    try (Workers workers = new Workers(1)) {
      SeasonBank shared = bank(past, workers);
      for (List<Wash> filler : List.of(days(1, 20), days(11, 30))) {
        read(shared, past, filler, workers);
      }
      for (List<Wash> record : records) {
        SeasonPosterior again = read(shared, past, record, workers);
        read(shared, past, days(30, 60), workers);
        SeasonPosterior alone = read(bank(past, workers), past, record, workers);
        assertThat(again.sample()).usingRecursiveComparison().isEqualTo(alone.sample());
      }
    }
  }

  @Test
  void banksServeOneSeasonAndSoManyColonies() {
    List<Wash> one = List.of(Invented.wash(5, 2, 300));
    assertThat(SeasonBank.serves(PAST, one, EFFORT)).isTrue();
    assertThat(SeasonBank.serves(PAST, List.of(), EFFORT)).isFalse();
    assertThat(SeasonBank.serves(PAST, one, new SamplerSettings(8192, 1, 1))).isTrue();
    assertThat(SeasonBank.serves(PAST, one, new SamplerSettings(8193, 1, 1))).isFalse();
    Scenario twoYears = Invented.season(400);
    // seasons of bees begin with March
    LocalDate march = LocalDate.of(2026, 3, 1);
    int day = (int) (march.toEpochDay() - Invented.START.toEpochDay());
    assertThat(SeasonBank.serves(twoYears, List.of(Invented.wash(day - 1, 2, 300)), EFFORT))
        .isTrue();
    assertThat(
            SeasonBank.serves(
                twoYears, List.of(Invented.wash(5, 2, 300), Invented.wash(day, 2, 300)), EFFORT))
        .isFalse();
    // a thousand bytes for the unknowns, and two floats for each of 32 days
    assertThat(SeasonBanks.bytes(64)).isEqualTo(8 * 64 * (1000 + 2 * 4 * 32));
    assertThat(SeasonBanks.bytes(8192)).isPositive();
    assertThat(SeasonBanks.bytes(8193)).isZero();
  }

  /** With boards a record has its own sampler; what banks serve is read as by one of its own. */
  @Test
  void banksReadAsOneOfItsOwnAndWithBoardsASamplerDoes() {
    Scenario past = Invented.season(60);
    BoardCount board =
        new BoardCount(Invented.START.plusDays(20), Invented.START.plusDays(23), "A", 20);
    List<Wash> washes = List.of(Invented.wash(30, 4, 300), Invented.wash(5, 3, 300));
    List<Wash> ordered = List.of(washes.get(1), washes.get(0));
    List<Wash> extreme = List.of(Invented.wash(5, 200, 300), Invented.wash(30, 20, 300));
    try (Workers workers = new Workers(1)) {
      SeasonBanks banks = new SeasonBanks(1);
      assertThat(sample(banks, past, washes, List.of(board), workers))
          .isDeepEqualTo(own(past, washes, List.of(board), workers));
      SeasonPosterior steep = read(bank(past, workers), past, extreme, workers);
      assertThat(drawn(steep)).isFalse();
      assertThat(sample(banks, past, extreme, List.of(), workers))
          .isDeepEqualTo(steep.sample().z());
      double[][] shared = read(bank(past, workers), past, ordered, workers).sample().z();
      for (SeasonBanks each : List.of(banks, new SeasonBanks(2))) {
        assertThat(sample(each, past, washes, List.of(), workers)).isDeepEqualTo(shared);
        sample(each, PAST, washes, List.of(), workers);
        assertThat(sample(each, past, washes, List.of(), workers)).isDeepEqualTo(shared);
      }
    }
  }

  private static double[][] sample(
      SeasonBanks banks,
      Scenario past,
      List<Wash> washes,
      List<BoardCount> boards,
      Workers workers) {
    return banks
        .posterior(past, washes, boards, PRIORS, EFFORT, workers, Progress.NONE)
        .sample()
        .z();
  }

  private static double[][] own(
      Scenario past, List<Wash> washes, List<BoardCount> boards, Workers workers) {
    RecordOrigin origin = new RecordOrigin(past.model(), past.start());
    List<Wash> ordered = SeasonPosterior.ordered(past, washes);
    return SeasonPosterior.sampled(
            past, ordered, boards, PRIORS, EFFORT, origin, Optional.empty(), workers, Progress.NONE)
        .sample()
        .z();
  }

  /** Each unknown exchanged for that of a second draw, all others as in the first. */
  @Test
  void unknownsAreExchangedOneByOne() {
    Scenario past = Invented.season(45, Invented.strips(10));
    Scenario season = Invented.season(90, Invented.strips(10));
    LocalDate day = Invented.START.plusDays(70);
    try (Workers workers = new Workers(1)) {
      SeasonPosterior posterior =
          SeasonPosterior.of(
              past, List.of(Invented.wash(40, 3, 300)), PRIORS, EFFORT, workers, Progress.NONE);
      List<PriorSensitivity> found =
          PriorSensitivity.of(season, posterior, day, v -> Math.log(v + 0.1), 4, workers);
      BeeYears years = BeeYears.of(season, Invented.START.plusDays(40));
      ParticleLayout layout = ParticleLayout.of(SeasonPosterior.courses(season), 1);
      int places = layout.places().size();
      double[][] first = normal(4, places);
      double[][] second = normal(5, places);
      double[] base = answers(season, first, layout, years, day, workers);
      assertThat(found).hasSize(places);
      for (int d = 0; d < places; d++) {
        int at = d;
        double[][] mixed =
            IntStream.range(0, 128)
                .mapToObj(
                    i ->
                        IntStream.range(0, places)
                            .mapToDouble(k -> k == at ? second[i][k] : first[i][k])
                            .toArray())
                .toArray(double[][]::new);
        double[] other = answers(season, mixed, layout, years, day, workers);
        PriorSensitivity s = found.get(d);
        assertThat(s.unknown()).isEqualTo(layout.places().get(d).unknown());
        assertThat(s.course()).isEqualTo(layout.places().get(d).course());
        assertThat(s.season()).isEqualTo(layout.places().get(d).season());
        assertThat(s.index().share()).isCloseTo(TotalIndex.of(base, other).share(), within(1e-9));
      }
      assertThat(found)
          .anyMatch(s -> s.index().share() > 0.2)
          .anyMatch(s -> s.index().share() == 0);
    }
  }

  private static double[][] normal(long seed, int unknowns) {
    SplittableRandom random = Streams.of(seed, Streams.Purpose.SENSITIVITY);
    double[][] out = new double[PriorSensitivity.DRAWS][];
    for (int i = 0; i < out.length; i++) {
      out[i] = IntStream.range(0, unknowns).mapToDouble(d -> random.nextGaussian()).toArray();
    }
    return out;
  }

  private static double[] answers(
      Scenario season,
      double[][] z,
      ParticleLayout layout,
      BeeYears years,
      LocalDate day,
      Workers workers) {
    List<SimulatedColony> colonies =
        Arrays.stream(z).map(row -> PRIORS.draw(row, layout).colony(years)).toList();
    EnsembleRun run =
        EnsembleRun.of(
            season,
            StandardColony.on(season.model(), season.start()),
            colonies,
            Watched.daily(Set.of(Quantity.INFESTATION)),
            workers,
            Progress.NONE);
    return Arrays.stream(run.values(Quantity.INFESTATION, day))
        .map(v -> Math.log(v + 0.1))
        .toArray();
  }
}
