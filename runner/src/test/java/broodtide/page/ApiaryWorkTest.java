package broodtide.page;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Progress;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is worked out again when something changed, and what is said of many hives. */
class ApiaryWorkTest {
  private static final int COLONIES = 64;

  @TempDir private Path dir;
  private final ApiaryWork work = new ApiaryWork("test", COLONIES);
  private final List<String> begun = new ArrayList<>();

  @AfterEach
  void close() {
    work.close();
  }

  private Progress begin(String what, int part, int parts) {
    begun.add(what);
    return Progress.NONE;
  }

  private HiveFolder.Apiary apiary(List<String> rows, String plans) throws IOException {
    Files.writeString(
        dir.resolve("washes.csv"), "date,colony,mites,bees\n" + String.join("\n", rows) + "\n");
    Files.writeString(
        dir.resolve("study.json"),
        """
        {
          "title": "Thornbank", "climate": "temperate", "start": "2026-05-01",
          "until": "2027-04-01", "colony": {"name": "Hive 1"}, "surroundings": "sparse",
          "washes": "washes.csv", "plans": [{"name": "wait"}%s]
        }
        """
            .formatted(plans));
    return new HiveFolder(dir, OpenHives.DAY).apiary();
  }

  private static List<String> hives(int count) {
    List<String> rows = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      rows.add("2026-07-25,Hive " + i + "," + i % 9 + ",300");
    }
    return rows;
  }

  @Test
  void aPlanMoreAndAnotherHivesCountLeaveWhatIsKnownInForce() throws Exception {
    List<String> rows = hives(3);
    JsonNode first = work.stand(apiary(rows, ""), this::begin);
    assertThat(begun).hasSize(6);
    begun.clear();
    String plan =
        ", {\"name\": \"August\", \"controls\": [{\"use\": \"thymol\", \"start\":"
            + " \"2026-08-18\"}]}";
    JsonNode again = work.stand(apiary(rows, plan), this::begin);
    assertThat(begun).isEmpty();
    assertThat(again.path("hives")).isEqualTo(first.path("hives"));
    rows.set(1, "2026-07-25,Hive 2,20,300");
    JsonNode other = work.stand(apiary(rows, plan), this::begin);
    assertThat(begun).containsExactly("reading the washes of Hive 2", "playing plans for Hive 2");
    assertThat(other.path("hives").get(0).path("name").asText()).isEqualTo("Hive 2");
    begun.clear();
    work.plans(apiary(rows, plan), "Hive 2", ApiaryWork.own(apiary(rows, plan)), this::begin);
    assertThat(begun).noneMatch(s -> s.startsWith("reading"));
  }

  @Test
  void theClimateIsAskedOnceForTheSameWashes() throws Exception {
    List<String> rows = new ArrayList<>();
    for (String day : List.of("05-02", "06-10", "07-25")) {
      rows.add("2026-" + day + ",Hive 1,2,300");
    }
    JsonNode first = work.climate(apiary(rows, ""), this::begin);
    assertThat(work.climate(apiary(rows, ""), this::begin)).isEqualTo(first);
    assertThat(begun).hasSize(1);
    rows.set(2, "2026-07-25,Hive 1,9,300");
    work.climate(apiary(rows, ""), this::begin);
    assertThat(begun).hasSize(2);
  }

  @Test
  @Tag("slow")
  void manyHivesHaveTheirSheetAndSentences() throws Exception {
    HiveFolder.Apiary many = apiary(hives(ApiaryWork.MOST_DRAWN + 1), "");
    JsonNode found = work.stand(many, this::begin);
    assertThat(found.path("hives")).hasSize(31);
    assertThat(found.path("hives").get(0).has("season")).isFalse();
    assertThat(found.path("hives").get(0).path("lines")).isNotEmpty();
    assertThat(found.path("notes").toString()).contains("more than 30 hives");
    assertThat(found.path("sheet").asText()).contains("Hive 31");
  }

  /** Of many hives the report is the sheet, with the table and the lines that compare writes. */
  @Test
  @Tag("slow")
  void manyHivesHaveAReportOfTheirSheet() throws Exception {
    assertThat(ApiaryWork.many(apiary(hives(ApiaryWork.MOST_DRAWN), ""))).isFalse();
    apiary(hives(ApiaryWork.MOST_DRAWN + 1), "");
    JsonNode found;
    try (OpenHives page = new OpenHives(dir)) {
      found = page.worked(OpenHives.object().put("what", "report")).path("answer");
      assertThat(page.troubles()).isEmpty();
    }
    assertThat(found.path("note").asText()).contains("more than 30 hives", "results.jsonl");
    Path out = Path.of(found.path("folder").asText());
    assertThat(out.resolve("sheet.csv")).content().hasLineCount(32).contains("Hive 31");
    List<String> lines = Files.readAllLines(out.resolve("results.jsonl"));
    assertThat(lines).hasSize(31);
    assertThat(OpenHives.JSON.readTree(lines.get(30)).path("colony").asText()).startsWith("Hive ");
    assertThat(out.resolve("report.html"))
        .content()
        .contains("of 31 hives", "results.jsonl")
        .doesNotContain("href=\"#\"");
    try (Stream<Path> all = Files.list(out)) {
      assertThat(all.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder(
              "report.html", "sheet.csv", "results.jsonl", "broodtide-files.json");
    }
  }
}
