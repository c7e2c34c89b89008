package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Studies from the command line. */
class StudyCommandTest {
  @TempDir Path folder;
  private Path study;
  private Path washes;

  @BeforeEach
  void starter() throws IOException {
    Bench.Outcome r = Bench.run("study", "new", folder.resolve("mine").toString(), "--json");
    JsonNode json = new ObjectMapper().readTree(r.out());
    assertThat(json.path("files")).hasSize(3);
    study = folder.resolve("mine/study.json");
    washes = folder.resolve("mine/washes.csv");
    assertThat(study).exists();
  }

  private static void swap(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertThat(text).contains(from);
    Files.writeString(file, text.replace(from, to));
  }

  private JsonNode checked(int code) throws IOException {
    Bench.Outcome r = Bench.run("study", "check", study.toString(), "--json");
    assertThat(r.code()).as(r.err()).isEqualTo(code);
    return new ObjectMapper().readTree(r.out());
  }

  @Test
  void aSoundOneIsSaidToBe() throws IOException {
    JsonNode json = checked(0);
    assertThat(json.path("sound").asBoolean()).isTrue();
    assertThat(json.path("washes").asInt()).isEqualTo(4);
    assertThat(json.path("faults")).isEmpty();
  }

  @Test
  void faultsOfStudyAndWashesAreListedAtOnce() throws IOException {
    swap(study, "\"cool-maritime\"", "\"cool-maritme\"");
    swap(study, "\"framesOfBees\": 7", "\"framesOfBees\": 700");
    swap(washes, "2025-05-25", "2025-15-25");
    Bench.Outcome r = Bench.run("study", "check", study.toString());
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("3 faults", "$.climate", "$.colony.framesOfBees", "washes.csv");
    JsonNode faults = checked(2).path("faults");
    assertThat(StreamSupport.stream(faults.spliterator(), false).map(f -> f.path("field").asText()))
        .containsExactly("$.climate", "$.colony.framesOfBees", "date");
    assertThat(faults.at("/2/line").asInt()).isEqualTo(4);
    assertThat(faults.at("/2/value").asText()).isEqualTo("2025-15-25");
  }

  @Test
  void aColonyThatTheTableLacksIsToldFromThoseItHas() throws IOException {
    swap(study, "{\"name\": \"Larkmeadow 2\"", "{\"name\": \"Larkmedow\"");
    Bench.Outcome r = Bench.run("study", "check", study.toString());
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("\"Larkmedow\"", "the table of washes has Larkmeadow 2");
  }

  @Test
  void brokenJsonIsAFaultToo() throws IOException {
    Files.writeString(study, "{\"title\": ");
    assertThat(checked(2).path("faults")).isNotEmpty();
  }

  @Test
  void answersLeadToTheClimateOfANewStudy() throws IOException {
    Path other = folder.resolve("other");
    Bench.Outcome r =
        Bench.run(
            "study",
            "new",
            other.toString(),
            "--answer",
            "winter-bees=09-25",
            "--answer",
            "summer-high=33",
            "--answer",
            "midwinter-brood=little");
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out()).contains("Closest climate: warm-temperate.", "Summer afternoons: agrees.");
    assertThat(other.resolve("study.json")).content().contains("\"climate\": \"warm-temperate\"");
    assertThat(Bench.run("study", "check", other.resolve("study.json").toString()).code()).isZero();
  }

  @ParameterizedTest
  @CsvSource({
    "winter-bees=August, a day such as 08-20",
    "honey=08-20, winter-bees",
    "winter-bees, QUESTION=ANSWER"
  })
  void whatIsNoAnswerIsRefusedAndNothingIsWritten(String answer, String expected) {
    Path other = folder.resolve("other");
    Bench.Outcome r = Bench.run("study", "new", other.toString(), "--answer", answer);
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains(expected);
    assertThat(other).doesNotExist();
  }

  @Test
  void questionsArePutOneByOne() throws IOException {
    Path other = folder.resolve("asked");
    Bench.Outcome r =
        Bench.fed(
            "20 August\n08-20\nnone\n\n04-26\n26\n", "study", "new", other.toString(), "--ask");
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out())
        .contains("When do your colonies begin to raise winter bees?", "Please give a day")
        .contains("Closest climate: cold-continental.");
    assertThat(other.resolve("study.json")).content().contains("cold-continental");
  }
}
