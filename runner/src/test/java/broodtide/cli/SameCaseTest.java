package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Comparison;
import broodtide.assessment.Horizon;
import broodtide.assessment.Place;
import broodtide.assessment.PlanRun;
import broodtide.assessment.PlanSummary;
import broodtide.assessment.UsualPlans;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.study.Studies;
import broodtide.study.WashFile;
import broodtide.wash.Wash;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program of one's own gets the case, and so the figures, that the command prints. */
class SameCaseTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 12, 1);
  private static final int COLONIES = 256;

  @TempDir private Path folder = Path.of("");

  private JsonNode printed(String... named) throws IOException {
    List<String> call = new ArrayList<>(List.of("compare", "--json", "--colonies=" + COLONIES));
    call.add("--out=" + folder.resolve("out"));
    call.addAll(List.of(named));
    Trial trial = Trial.run("", call.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    return new ObjectMapper().readTree(trial.out()).at("/colonies/0");
  }

  private static void same(ColonyCase c, JsonNode printed) {
    assertThat(c.colony()).isEqualTo(printed.get("colony").asText());
    assertThat(c.start()).isEqualTo(printed.get("start").asText());
    assertThat(c.now()).isEqualTo(printed.get("now").asText());
    assertThat(c.until()).isEqualTo(printed.get("until").asText());
    assertThat(c.washes()).hasSameSizeAs(printed.get("washes"));
    assertThat(c.thresholds().name()).isEqualTo(printed.get("thresholdSet").asText());
    Plan wait = Plan.waiting(UsualPlans.WAIT);
    try (Workers workers = new Workers(2)) {
      SeasonPosterior.SamplerSettings effort = new SeasonPosterior.SamplerSettings(COLONIES, 3, 1);
      SeasonPosterior posterior = c.posterior(effort, workers, Progress.NONE);
      PlanRun run =
          Comparison.of(c, posterior, List.of(wait), workers, Progress.NONE).runs().get(0);
      PlanSummary waiting = run.summary();
      JsonNode decided = printed.at("/decision/waiting");
      assertThat(fourDigits(waiting.infestation()))
          .isEqualByComparingTo(printed.at("/plans/0/whenRaised/infestation/median").decimalValue())
          .isEqualByComparingTo(decided.get("infestation").decimalValue());
      assertThat(fourDigits(waiting.winterLoss()))
          .isEqualByComparingTo(decided.get("winterLoss").decimalValue());
    }
  }

  /** The file has four digits. */
  private static BigDecimal fourDigits(double value) {
    return new BigDecimal(value, new MathContext(4));
  }

  @Test
  void fromATableOfWashes() throws IOException {
    String csv =
        """
        date,colony,mites,bees
        2025-04-24,Meadow,0,296
        2025-06-28,Meadow,2,304
        2025-07-26,Meadow,4,288
        """;
    Path file = Files.writeString(folder.resolve("washes.csv"), csv);
    Map<String, List<Wash>> washes;
    try (var in = Files.newInputStream(file)) {
      washes = WashFile.read(in, "washes.csv", TODAY).byColony();
    }
    Place place =
        Place.of(
            Catalog.climate("cool-maritime"),
            false,
            Surroundings.SPARSE,
            Catalog.threshold(Catalog.USUAL_THRESHOLD));
    ColonyCase c =
        ColonyCases.ofWashes(place, washes, Map.of(), Optional.empty(), Horizon::spring).get(0);
    same(c, printed(file.toString(), "--climate=cool-maritime"));
  }

  @Test
  void fromAStudy() throws IOException {
    same(ColonyCases.ofStudy(Studies.named("late-wash"), TODAY), printed("--study=late-wash"));
  }
}
