package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.campaign.Campaign;
import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.LongAdder;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Random apiaries through every command: each call answers soundly, or refuses in words and writes
 * nothing; and no miticide raises mites.
 */
class AnyStudyTest {
  private static final Duration PATIENCE = Duration.ofMinutes(2);

  private final SoundFiles files = new SoundFiles();
  private final LongAdder answered = new LongAdder();
  private final LongAdder refused = new LongAdder();

  @TempDir private Path temporary;

  private static Campaign campaign(Path folder, long seed) {
    return new Campaign("studies", folder, seed, 4, PATIENCE);
  }

  private void play(long number, SplittableRandom random) throws IOException {
    Path folder = Files.createDirectories(temporary.resolve("study" + number));
    AnyStudy study = new AnyStudy(random, folder);
    for (List<String> call : study.calls()) {
      Path out = folder.resolve("out");
      Trial trial = Trial.run("", call.toArray(String[]::new));
      String shown = "case " + number + ": " + String.join(" ", call);
      assertThat(trial.code()).as(shown + "\n" + trial.err()).isIn(Main.OK, Main.BAD_INPUT);
      files.text(shown, trial.out() + trial.err());
      if (trial.code() == Main.OK) {
        answered.increment();
        if (call.contains("--json")) {
          files.json(shown, trial.out());
        } else {
          files.checkAll(out);
          clear(out);
        }
      } else {
        refused.increment();
        assertThat(trial.err()).as(shown).isNotBlank();
        assertThat(trial.err().lines().count()).as(shown + "\n" + trial.err()).isLessThan(30);
        assertThat(out).as(shown).doesNotExist();
      }
    }
    noMiticideRaisesMites(random);
    clear(folder);
  }

  /**
   * The same simulated colonies, those that fit a few washes, with and without a course of each
   * miticide: the day after the course the treated hold fewer mites on average. Later the untreated
   * may hold fewer, because fewer bees are left to bear them.
   */
  private static void noMiticideRaisesMites(SplittableRandom random) {
    ColonyModel place = ColonyModel.in(Catalog.climate(oneOf(Catalog.CLIMATES.names(), random)));
    LocalDate first = LocalDate.of(2025, 1, 1).plusDays(random.nextInt(200));
    LocalDate last = first.plusDays(random.nextInt(20, 60));
    List<Wash> washes =
        List.of(
            Wash.of(first, "A", random.nextInt(10), 300),
            Wash.of(last, "A", random.nextInt(25), 300));
    Scenario past = Scenario.until(place, Plan.waiting("wait"), first, last);
    try (Workers workers = new Workers(1)) {
      SeasonPosterior.SamplerSettings effort =
          new SeasonPosterior.SamplerSettings(256, 1, random.nextInt(1000));
      SeasonPosterior colonies =
          SeasonPosterior.of(past, washes, Priors.defaults(), effort, workers, Progress.NONE);
      LocalDate start = last.plusDays(random.nextInt(1, 120));
      for (String name : Catalog.CONTROLS.names()) {
        Control control = Catalog.control(name).at(start);
        if (control instanceof MiticideCourse) {
          LocalDate after = control.to().plusDays(1);
          double untreated = mites(colonies, place, Plan.waiting("wait"), first, after, workers);
          Plan plan = new Plan(name, List.of(control));
          assertThat(mites(colonies, place, plan, first, after, workers))
              .as("mites on %s after %s from %s in %s", after, name, start, place.climate().name())
              .isLessThanOrEqualTo(untreated * (1 + 1e-6));
        }
      }
    }
  }

  private static double mites(
      SeasonPosterior colonies,
      ColonyModel place,
      Plan plan,
      LocalDate first,
      LocalDate day,
      Workers workers) {
    Scenario season = Scenario.until(place, plan, first, day);
    return Arrays.stream(
            colonies
                .run(season, Set.of(Quantity.MITES), workers, Progress.NONE)
                .values(Quantity.MITES, day))
        .average()
        .orElseThrow();
  }

  private static String oneOf(List<String> words, SplittableRandom random) {
    return words.get(random.nextInt(words.size()));
  }

  private static void clear(Path folder) throws IOException {
    List<Path> all = new ArrayList<>();
    try (var files = Files.walk(folder)) {
      files.forEach(all::add);
    }
    for (int i = all.size() - 1; i >= 0; i--) {
      Files.delete(all.get(i));
    }
  }

  @Test
  @Tag("slow")
  void six(@TempDir Path folder) throws Exception {
    assertThat(campaign(folder, 2).run(6, this::play)).isEqualTo(6);
    assertThat(answered.sum()).as("answered; %s refused", refused).isGreaterThan(2 * refused.sum());
  }

  /** DEVELOPERS.md says how to run it, and one case of it. */
  @Test
  @Tag("long")
  void asManyAsAsked() throws Exception {
    Path folder = Path.of(System.getProperty("campaign.folder", "target/campaign"));
    Campaign campaign = campaign(folder, Long.getLong("campaign.seed", 1));
    Long number = Long.getLong("campaign.case");
    if (number != null) {
      campaign.repeat(number, this::play);
    } else {
      campaign.run(Long.getLong("campaign.count", 300), this::play);
    }
    System.out.println(answered + " calls answered, " + refused + " refused");
  }
}
