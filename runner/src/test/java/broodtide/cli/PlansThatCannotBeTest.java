package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans that cannot be carried out are refused or flagged by name and date, never changed. */
class PlansThatCannotBeTest {
  private static final String WASHES =
      "date,colony,mites,bees\n2025-04-24,Meadow,1,300\n2025-07-26,Meadow,4,300\n";

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "on 2025-07-28 with queen-caging and on 2025-08-02 with split"
            + " | queen-caging 28 Jul, split 2 Aug | (2025-07-28 to 2025-08-21) | end one before",
        "on 2025-07-28 with queen-caging and on 2025-08-02 with requeening"
            + " | queen-caging 28 Jul, requeening 2 Aug | 2025-08-02 | end one before",
        "on 2025-08-01 with split and on 2025-08-05 with queen-caging"
            + " | split 1 Aug, queen-caging 5 Aug | 2025-08-05 | end one before"
      })
  void clashingControlsAreRefused(String plan, String name, String day, String mend)
      throws IOException {
    Bench.Outcome r = compare(plan);
    assertThat(r.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.err()).contains(name, day, mend).doesNotContain("went wrong");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "on 2025-04-01 with thymol | Left out: thymol 1 Apr | 2025-04-01",
        "on 2027-04-01 with thymol | Left out: thymol 1 Apr | 2027-04-01",
        "on 2025-07-01 with thymol | Left out: thymol 1 Jul | before the day of decision",
        "on 2025-11-20 with thymol | Note: Thymol | daily highs are usually near",
        "on 2025-08-01 with thymol | Against it: | supers are usually on"
      })
  void plansAgainstTheCalendarAreFlagged(String plan, String flag, String reason)
      throws IOException {
    Bench.Outcome r = compare(plan);
    assertThat(r.code()).isZero();
    assertThat(r.out().replaceAll("\\s+", " ")).contains(flag, reason);
    assertThat(folder.resolve("out")).isNotEmptyDirectory();
  }

  @Test
  void aPlanNamesItsOwnControls() throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
    Bench.Outcome r =
        Bench.run(
            "compare",
            washes.toString(),
            "--climate",
            "temperate",
            "--with",
            "thymol",
            "--plan",
            "on 2025-08-25 with thymol");
    assertThat(r.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.err()).contains("--with and --plan cannot stand together");
  }

  @Test
  void aPlanThatCannotRunDoesNotStopTheRest() throws IOException {
    Bench.Outcome r = compare("on 2025-04-01 with thymol", "on 2025-08-25 with thymol");
    assertThat(r.code()).isZero();
    assertThat(r.out()).contains("Left out: thymol 1 Apr", "thymol 25 Aug");
  }

  @Test
  void ownPlansStandBesideTheUsualOnesOrAlone() throws IOException {
    Bench.Outcome beside = compare("on 2025-08-25 with thymol");
    assertThat(beside.code()).as(beside.err()).isZero();
    assertThat(beside.out())
        .contains("cut drone comb", "+ oxalic", "oxalic-vapour", "thymol 25 Aug");
    Bench.Outcome alone = compare("on 2025-08-25 with thymol", "--only");
    assertThat(alone.code()).as(alone.err()).isZero();
    assertThat(alone.out()).contains("wait", "thymol 25 Aug").doesNotContain("cut drone comb");
  }

  @Test
  void onlyNeedsAPlan() {
    Bench.Outcome r = Bench.run("compare", "--study", "late-wash", "--only");
    assertThat(r.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.err()).contains("--only is for plans of your own");
  }

  @Test
  void ownPlansStandBesideThoseOfAStudy() {
    Bench.Outcome r =
        Bench.run(
            "compare",
            "--study=late-wash",
            "--plan=on 2025-09-01 with thymol",
            "--colonies=64",
            "--out=" + folder.resolve("out"));
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out()).contains("December alone", "thymol 1 Sep");
  }

  private Bench.Outcome compare(String... plans) throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
    String[] call = {
      "compare",
      washes.toString(),
      "--climate",
      "cool-maritime",
      "--colonies",
      "64",
      "--out",
      folder.resolve("out").toString()
    };
    List<String> all = new ArrayList<>(List.of(call));
    for (String plan : plans) {
      all.add(plan.startsWith("--") ? plan : "--plan=" + plan);
    }
    return Bench.run(all.toArray(String[]::new));
  }
}
