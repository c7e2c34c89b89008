package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.page.OpenHives;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands take a folder as the page left it. */
class FolderOfThePageTest {
  @TempDir private Path dir;

  /** With dates of one's own, and a plan. */
  @Tag("slow")
  @Test
  void commandsReadWhatThePageSaved() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      String version = page.asked("load", OpenHives.object()).path("version").asText();
      ObjectNode body = OpenHives.object().put("version", version);
      ObjectNode washes = body.putObject("washes");
      List.of("date", "colony", "mites", "bees").forEach(washes.putArray("columns")::add);
      ArrayNode rows = washes.putArray("rows");
      List.of("2025-05-02", "Thornbank 1", "1", "302").forEach(rows.addArray()::add);
      List.of("2025-07-25", "Thornbank 1", "7", "").forEach(rows.addArray()::add);
      ObjectNode place = body.putObject("place");
      place.put("climate", "temperate").put("south", false);
      place.put("neighbours", "sparse").put("threshold", "kulhanek-2021");
      place.putArray("supers").add("04-25").add("07-28");
      ObjectNode plan = body.putArray("plans").addObject().put("name", "August");
      plan.putArray("controls").addObject().put("use", "thymol").put("start", "2025-08-18");
      page.asked("save", body);
    }
    String study = dir.resolve("study.json").toString();
    assertThat(Trial.run("", "study", "check", study).out()).contains("is valid");
    Trial compared =
        Trial.run(
            "",
            "compare",
            "--study",
            study,
            "--colonies",
            "64",
            "--out",
            dir.resolve("o").toString());
    assertThat(compared.code()).as(compared.err()).isZero();
    assertThat(compared.out()).contains("Thornbank 1", "August");
  }
}
