package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Member;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Trajectory;
import broodtide.season.Climate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** The Java example of the README: it compiles, runs, and is the one that the README shows. */
class ReadmeExampleTest {
  @Test
  void runs() {
    Climate climate = Library.climate("temperate");
    LocalDate start = LocalDate.of(2026, 4, 18);
    LocalDate end = LocalDate.of(2026, 10, 1);
    Scenario season = Scenario.until(ColonyModel.in(climate), Plan.waiting("wait"), start, end);
    Trajectory colony = DailyEngine.run(season, Member.average(0.4));
    double perHundred = colony.at(Quantity.INFESTATION, LocalDate.of(2026, 9, 1));
    assertThat(perHundred).isGreaterThan(0.4);
  }

  @Test
  void standsInTheReadme() throws IOException {
    String readme = Files.readString(Path.of("../README.md"));
    String shown = readme.split("```java\n")[1].split("```")[0];
    String here = Files.readString(Path.of("src/test/java/broodtide/study/ReadmeExampleTest.java"));
    assertThat(shown.lines().filter(l -> !l.isBlank()))
        .allSatisfy(line -> assertThat(here).contains(line.strip()));
  }
}
