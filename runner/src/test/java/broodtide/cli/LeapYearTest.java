package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The 29th of February as a day of a wash, of a plan, and in the middle of a season. */
class LeapYearTest {
  @TempDir private Path folder = Path.of("");

  private Bench.Outcome run(String... more) throws IOException {
    Path washes =
        Files.writeString(
            folder.resolve("w.csv"),
            "date,colony,mites,bees\n2023-10-20,A,2,300\n2024-02-29,A,1,300\n");
    return Bench.run(
        Stream.concat(
                Stream.of(more),
                Stream.of(
                    washes.toString(),
                    "--climate=temperate",
                    "--colonies=64",
                    "--out=" + folder.resolve("out")))
            .toArray(String[]::new));
  }

  @Test
  void seasonsRunAcrossIt() throws IOException {
    Bench.Outcome r =
        run("compare", "--until=2024-06-30", "--plan=on 2024-03-05 with oxalic-vapour");
    assertThat(r.code()).as(r.err()).isZero();
    List<LocalDate> days = new ArrayList<>();
    for (String row : Files.readAllLines(folder.resolve("out/season.csv"))) {
      String[] cells = row.split(",", -1);
      if (cells.length > 2 && cells[2].equals("wait")) {
        days.add(LocalDate.parse(cells[0]));
      }
    }
    LocalDate first = days.get(0);
    LocalDate last = days.get(days.size() - 1);
    assertThat(days)
        .containsExactlyElementsOf(first.datesUntil(last.plusDays(1)).toList())
        .contains(LocalDate.of(2024, 2, 29), LocalDate.of(2024, 6, 30));
  }

  @Test
  void itCanBeNamed() throws IOException {
    Bench.Outcome r =
        run(
            "forecast",
            "--until=2024-05-01",
            "--supers=02-29..05-01",
            "--winter-bees=09-01..02-29");
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.err()).isEmpty();
    assertThat(run("worked", "--treated=2024-02-29", "--with=thymol").code()).isEqualTo(2);
    assertThat(run("forecast", "--until=2025-02-29").err()).contains("'2025-02-29'");
  }
}
