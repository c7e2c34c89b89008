package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.StartedColonies;
import broodtide.engine.Workers;
import broodtide.fit.BankAgainstSampler.Compared;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.Wash;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Records that share seasons: what they say is theirs alone, and as good as a sampler of each. */
class SeasonBankTest {
  private static final SamplerSettings EFFORT = new SamplerSettings(256, 3, 1);
  private static final Scenario PLAIN = Invented.season(122);
  private static final Scenario TREATED = Invented.season(122, Invented.strips(40));

  @Test
  void aRecordHangsNeitherOnOthersNorOnThreads() {
    List<List<Wash>> records =
        List.of(
            Invented.four(),
            List.of(Invented.wash(0, 3, 300), Invented.wash(45, 5, 300)),
            List.of(Invented.wash(110, 4, 300)));
    List<double[][]> alone = new ArrayList<>();
    try (Workers one = new Workers(1)) {
      for (List<Wash> washes : records) {
        alone.add(read(new SeasonBanks(1), PLAIN, washes, one));
      }
    }
    for (int threads : new int[] {2, 7}) {
      try (Workers workers = new Workers(threads)) {
        SeasonBanks banks = new SeasonBanks(1);
        for (int i = records.size() - 1; i >= 0; i--) {
          read(banks, TREATED, records.get(i), workers);
          assertThat(read(banks, PLAIN, records.get(i), workers)).isDeepEqualTo(alone.get(i));
        }
      }
    }
  }

  @Test
  void coloniesStandOnTheFirstDayAsTheirUnknownsSay() {
    try (Workers workers = new Workers(2)) {
      SeasonPosterior shared = posterior(new SeasonBanks(1), TREATED, Invented.four(), workers);
      SeasonPosterior own =
          SeasonPosterior.drawn(
              TREATED,
              new RecordOrigin(TREATED.model(), TREATED.start()),
              Priors.defaults(),
              Invented.four(),
              new TemperedSampler.Sample(withoutAhead(shared), 256, 1, 1, 0),
              StartedColonies.of(shared.start().about(), shared.members(), workers));
      for (Wash wash : Invented.four()) {
        assertThat(infestations(shared, wash, workers)).isEqualTo(infestations(own, wash, workers));
      }
    }
  }

  @Test
  void whereTooFewSeasonsFitASamplerGoesOnFromThem() {
    List<Wash> extreme =
        List.of(Invented.wash(0, 90, 300), Invented.wash(31, 2, 300), Invented.wash(92, 150, 300));
    try (Workers workers = new Workers(2)) {
      SeasonPosterior from = posterior(new SeasonBanks(1), PLAIN, extreme, workers);
      SeasonPosterior own = Invented.sampled(PLAIN, extreme, EFFORT.particles(), 1, workers);
      assertThat(from.sample().acceptance()).isLessThan(1);
      assertThat(from.sample().steps()).isLessThan(own.sample().steps());
      assertThat(from.members()).hasSize(EFFORT.particles());
      Wash last = extreme.get(2);
      assertThat(middle(from, last, workers)).isCloseTo(middle(own, last, workers), within(0.1));
    }
  }

  /** Mean logarithm of the mites that the wash would show. */
  private static double middle(SeasonPosterior posterior, Wash wash, Workers workers) {
    return infestations(posterior, wash, workers).stream()
        .mapToDouble(Math::log)
        .average()
        .orElseThrow();
  }

  @Test
  void recordsAcrossAWinterHaveTheirOwnSampler() {
    Scenario twoYears = Invented.season(400);
    List<Wash> washes = List.of(Invented.wash(0, 1, 300), Invented.wash(370, 3, 300));
    try (Workers workers = new Workers(2)) {
      assertThat(read(new SeasonBanks(1), twoYears, washes, workers))
          .isDeepEqualTo(
              Invented.sampled(twoYears, washes, EFFORT.particles(), 1, workers).sample().z());
    }
  }

  /** Few hives: catches a bank that leans to one side or is much coarser than a sampler. */
  @Test
  void aFewHivesAreReadAsBySamplers() {
    try (Workers workers = new Workers(2)) {
      for (Compared c : new BankAgainstSampler(128, 2, workers).run(24)) {
        assertThat(c.bank()).as(c.toString()).isLessThan(1.5 * c.sampler());
        assertThat(Math.abs(c.lean())).as(c.toString()).isLessThan(c.sampler());
      }
    }
  }

  /**
   * The proof: over 300 hives medians and ends of 90 % intervals differ between seeds of the bank
   * no more than between seeds of the sampler, and the bank leans to a side by less than a third of
   * that.
   */
  @Test
  @Tag("long")
  void hivesAreReadAsBySamplers() {
    int hives = 300;
    try (Workers workers = new Workers(2)) {
      BankAgainstSampler both = new BankAgainstSampler(512, 4, workers);
      List<Compared> all = both.run(hives);
      all.forEach(System.out::println);
      System.out.printf("%.3f had a sampler of their own%n", both.fallenBack(hives));
      for (Compared c : all) {
        assertThat(c.bank()).as(c.toString()).isLessThan(1.1 * c.sampler());
        assertThat(Math.abs(c.lean())).as(c.toString()).isLessThan(c.sampler() / 3);
      }
      assertThat(both.fallenBack(hives)).isLessThan(0.25);
    }
  }

  private static SeasonPosterior posterior(
      SeasonBanks banks, Scenario past, List<Wash> washes, Workers workers) {
    List<Wash> turned = new ArrayList<>(washes);
    Collections.reverse(turned);
    return banks.posterior(
        past, turned, List.of(), Priors.defaults(), EFFORT, workers, Progress.NONE);
  }

  private static double[][] read(
      SeasonBanks banks, Scenario past, List<Wash> washes, Workers workers) {
    return posterior(banks, past, washes, workers).sample().z();
  }

  private static double[][] withoutAhead(SeasonPosterior posterior) {
    int sampled = SeasonPosterior.layout(posterior.past(), posterior.lastWash()).sampled();
    return Arrays.stream(posterior.sample().z())
        .map(z -> Arrays.copyOf(z, sampled))
        .toArray(double[][]::new);
  }

  private static List<Double> infestations(SeasonPosterior posterior, Wash wash, Workers workers) {
    List<ExpectedWashes.Parts> parts =
        ExpectedWashes.parts(posterior, posterior.past().plan(), List.of(wash), workers);
    return Arrays.stream(parts.get(0).means()).boxed().toList();
  }
}
