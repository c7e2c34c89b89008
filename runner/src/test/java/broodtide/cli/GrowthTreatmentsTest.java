package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A treatment parts the washes of {@code growth} alike, however it is named. */
class GrowthTreatmentsTest {
  private static final String WASHES =
      """
      date,colony,mites,bees,method,frame
      2026-06-10,Left,5,310,alcohol,mixed
      2026-07-08,Left,14,295,alcohol,mixed
      2026-08-09,Left,27,300,alcohol,mixed
      2026-09-05,Left,6,310,alcohol,mixed
      2026-09-28,Left,11,300,alcohol,mixed
      2026-06-10,Right,3,300,alcohol,mixed
      2026-07-10,Right,9,300,alcohol,mixed
      2026-08-10,Right,20,310,alcohol,mixed
      """;

  @TempDir private Path folder;
  private Path washes = Path.of("");

  @BeforeEach
  void write() throws IOException {
    washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
  }

  private String growth(String... more) {
    List<String> args =
        new ArrayList<>(List.of("growth", washes.toString(), "--climate", "temperate"));
    args.addAll(List.of(more));
    Bench.Outcome r = Bench.run(args.toArray(String[]::new));
    assertThat(r.code()).as(r.err()).isZero();
    return r.out();
  }

  private String given(String rows) throws IOException {
    Path file = folder.resolve("given.csv");
    Files.writeString(file, "date,colony,control\n" + rows);
    return file.toString();
  }

  @Test
  void tableOfTreatmentsAndBareDatesGiveTheVerySameAnswer() throws IOException {
    String table = given("2026-08-12,Left,formic-strips\n2026-09-10,*,oxalic-dribble\n");
    for (List<String> form : List.of(List.of("--json"), List.of("--until", "2026-10-20"))) {
      List<String> byTable = new ArrayList<>(List.of("--colony", "Left", "--given", table));
      List<String> byDay = new ArrayList<>(List.of("--colony", "Left", "--treated", "2026-09-10"));
      byDay.addAll(List.of("--treated", "2026-08-12"));
      byTable.addAll(form);
      byDay.addAll(form);
      assertThat(growth(byTable.toArray(String[]::new)))
          .isEqualTo(growth(byDay.toArray(String[]::new)));
    }
  }

  /** By hand: the growth that the two stretches of Left share cannot be that of all five washes. */
  @Test
  void tableOfTreatmentsChangesTheGrowth() throws IOException {
    JsonNode none = left(growth("--json"));
    JsonNode cut = left(growth("--json", "--given", given("2026-08-12,Left,formic-strips\n")));
    assertThat(cut.path("perDay").asDouble()).isGreaterThan(2 * none.path("perDay").asDouble());
    assertThat(cut.path("treated").get(0).asText()).isEqualTo("2026-08-12");
    assertThat(none.path("treated")).isEmpty();
  }

  @Test
  void treatmentsOfOtherColoniesLeaveAColonyAloneAndStrangersAreNoted() throws IOException {
    String table = given("2026-08-12,Left,formic-strips\n2026-08-12,Middle,thymol\n");
    String out = growth("--json", "--given", table);
    JsonNode json = new ObjectMapper().readTree(out);
    JsonNode right = json.path("colonies").get(1);
    assertThat(right).isEqualTo(new ObjectMapper().readTree(growth("--json")).at("/colonies/1"));
    assertThat(json.path("notes").toString())
        .contains("Treatments of colony \\\"Middle\\\"", "are not used");
  }

  private static JsonNode left(String json) throws IOException {
    return new ObjectMapper().readTree(json).at("/colonies/0/growth");
  }
}
