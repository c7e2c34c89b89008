package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.assessment.ColonyCase;
import broodtide.catalog.Catalog;
import broodtide.decision.MemoryNeed;
import broodtide.engine.ColonyModel;
import broodtide.fit.Priors;
import broodtide.wash.Wash;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What would not fit into memory is refused before any work, and what is accepted runs. */
class MemoryCheckTest {
  private static final long GIGABYTE = 1L << 30;
  private static final Pattern LOWER = Pattern.compile("lower --colonies to (\\d+) or less");

  @TempDir Path dir;

  private static ColonyCase years(int ahead) {
    LocalDate first = LocalDate.of(2025, 4, 18);
    LocalDate now = first.plusDays(1);
    return new ColonyCase(
        "Meadow",
        ColonyModel.in(Catalog.climate("temperate")),
        first,
        now,
        now.plusYears(ahead),
        List.of(Wash.of(first, "Meadow", 1, 310)),
        List.of(),
        Catalog.threshold(Catalog.USUAL_THRESHOLD),
        Priors.defaults());
  }

  private static void check(long heap, int hives, int colonies, int plans, int ahead) {
    MemoryCheck.check(
        heap,
        Collections.nCopies(hives, years(ahead)),
        colonies,
        c -> MemoryNeed.ofPlans(c, hives, plans),
        "compare fewer plans");
  }

  @Test
  void whatCannotFitIsRefusedWithTheFigureAndTheRemedy() {
    assertThatThrownBy(() -> check(GIGABYTE / 2, 1, 65_536, 5, 1))
        .isInstanceOf(Refusal.class)
        .hasMessageContainingAll(
            "--colonies 65536 needs about", "may take 512 MB", "fewer plans", "-Xmx")
        .hasMessageFindingMatch(LOWER.pattern());
    assertThatThrownBy(() -> check(GIGABYTE, 1, 4096, 50, 3)).isInstanceOf(Refusal.class);
    assertThatThrownBy(() -> check(2 * GIGABYTE, 1, 262_144, 5, 1)).isInstanceOf(Refusal.class);
  }

  @Test
  void theUsualRunOfAnApiaryFitsAQuarterOfASmallMachine() {
    check(GIGABYTE / 2, 8, 4096, 5, 1);
    check(GIGABYTE, 8, 4096, 5, 2);
  }

  @Test
  void plansOfManyColoniesFitOneGigabyteHoweverManyThereAre() {
    check(GIGABYTE, 1, 65_536, 7, 1);
    check(GIGABYTE, 1, 65_536, 14, 1);
  }

  /** What a process of its own said, and its exit code. */
  private record Ended(int code, String said) {}

  private Ended run(int megabytes, String call) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xmx" + megabytes + "m", "-cp"));
    command.add(System.getProperty("java.class.path"));
    command.add(Main.class.getName());
    command.addAll(List.of(call.split(" ")));
    Path said = dir.resolve("said");
    Process p =
        new ProcessBuilder(command)
            .directory(dir.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    assertThat(p.waitFor(5, TimeUnit.MINUTES)).isTrue();
    return new Ended(p.exitValue(), Files.readString(said, StandardCharsets.UTF_8));
  }

  @Test
  void whatCompareAcceptsRunsInASmallHeap() throws IOException, InterruptedException {
    acceptedRuns("compare w.csv");
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "forecast w.csv",
        "rules w.csv",
        "worth w.csv",
        "worked w.csv --treated 2025-05-01 --with thymol",
        "backtest w.csv",
        "windows w.csv"
      })
  void whatIsAcceptedRunsInASmallHeap(String call) throws IOException, InterruptedException {
    acceptedRuns(call);
  }

  private void acceptedRuns(String call) throws IOException, InterruptedException {
    Files.writeString(
        dir.resolve("w.csv"),
        "date,colony,mites,bees\n2025-04-18,Meadow,1,310\n2025-05-20,Meadow,2,295\n",
        StandardCharsets.UTF_8);
    String usual = call + " --climate temperate --colonies ";
    Ended far = run(64, usual + 262_144);
    assertThat(far.code()).as(far.said()).isEqualTo(Main.BAD_INPUT);
    assertThat(far.said().strip().lines()).hasSize(1);
    Matcher lower = LOWER.matcher(far.said());
    assertThat(lower.find()).as(far.said()).isTrue();
    assertThat(dir.resolve("broodtide-out")).doesNotExist();
    Ended near = run(64, usual + lower.group(1));
    assertThat(near.code()).as(near.said()).isZero();
  }
}
