package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What runs here, and a report of a fault that its owner can look through. */
class AboutCommandTest {
  @TempDir Path folder;

  private static Map<String, String> entries(Path zip) throws IOException {
    Map<String, String> out = new LinkedHashMap<>();
    try (ZipInputStream in = new ZipInputStream(Files.newInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        out.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    return out;
  }

  @Test
  void saysWhatRunsAndWhereThingsAre() throws IOException {
    Bench.Outcome r = Bench.run("about");
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out().replaceAll("\\s+", " "))
        .contains("Version: broodtide", "Java: " + System.getProperty("java.version"))
        .contains("Licence: Apache-2.0", "broodtide-out", "estimates, never instructions")
        .contains("--report fault.zip", "Nothing is sent by itself");
    JsonNode json = new ObjectMapper().readTree(Bench.run("about", "--json").out());
    assertThat(json.path("java").asText()).contains(System.getProperty("java.home"));
    assertThat(json.path("licence").asText()).startsWith("Apache-2.0");
  }

  @Test
  void packsTheVersionsAndTheFilesThatAreNamed() throws IOException {
    Path washes = Files.writeString(folder.resolve("W\u00e4sche.csv"), "date,colony,mites,bees\n");
    Path zip = folder.resolve("fault.zip");
    String[] call = {"about", "--report", zip.toString(), "--with", washes.toString()};
    Bench.Outcome r = Bench.run(call);
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out()).contains("Written to");
    Map<String, String> packed = entries(zip);
    assertThat(packed.keySet()).containsExactly("versions.txt", "inputs/W\u00e4sche.csv");
    assertThat(packed.get("versions.txt")).contains("Version: broodtide", "Java: ");
    assertThat(packed).containsEntry("inputs/W\u00e4sche.csv", "date,colony,mites,bees\n");
    try (Stream<Path> there = Files.list(folder)) {
      assertThat(there).containsExactlyInAnyOrder(washes, zip);
    }

    byte[] before = Files.readAllBytes(zip);
    Bench.Outcome again = Bench.run(call);
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("exists already", "another name");
    assertThat(zip).hasBinaryContent(before);
  }

  @Test
  void aReportThatCannotBeIsRefused() throws IOException {
    Path zip = folder.resolve("fault.zip");
    Path washes = Files.writeString(folder.resolve("w.csv"), "date\n");
    Bench.Outcome missing =
        Bench.run(
            "about", "--report", zip.toString(), "--with", folder.resolve("no.csv").toString());
    assertThat(missing.code()).isEqualTo(2);
    assertThat(missing.err()).contains("no.csv", "there is no such file");
    Bench.Outcome twice =
        Bench.run("about", "--report", zip.toString(), "--with", "" + washes, "" + washes);
    assertThat(twice.code()).isEqualTo(2);
    assertThat(twice.err()).contains("two files", "w.csv", "rename");
    Bench.Outcome nowhere = Bench.run("about", "--with", washes.toString());
    assertThat(nowhere.code()).isEqualTo(2);
    assertThat(nowhere.err()).contains("--with needs --report");
    Bench.Outcome name = Bench.run("about", "--report", folder.resolve("fault.txt").toString());
    assertThat(name.code()).isEqualTo(2);
    assertThat(name.err()).contains("fault.txt", "write it like fault.zip");
    assertThat(zip).doesNotExist();
  }
}
