package broodtide.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the page takes, saves and refuses. */
class HiveFolderTest {
  private static final List<String> COLUMNS = List.of("date", "colony", "mites", "bees");

  private static final String REMARKED =
      """
      {
        // A remark of the user's own.
        "title": "Thornbank", /* and a second */ "climate": "temperate",
        "start": "2026-05-01",
        "until": "2027-04-01",
        "colony": {"name": "Thornbank 1"},   "surroundings": "sparse",
        "washes": "washes.csv",
        "plans": [
          {"name": "wait"},
          // The plan of last year.
          {"name": "August", "controls": [
            // As the club does it.
            {"use": "thymol", "start": "2026-08-18"}]}
        ]
        // The end.
      }
      """;

  @TempDir private Path dir;

  private static ObjectNode table(String... rows) {
    ObjectNode out = OpenHives.object();
    COLUMNS.forEach(out.putArray("columns")::add);
    ArrayNode all = out.putArray("rows");
    for (String row : rows) {
      ArrayNode cells = all.addArray();
      Stream.of(row.split(",", -1)).forEach(cells::add);
    }
    return out;
  }

  private static ObjectNode place() {
    return OpenHives.object()
        .put("climate", "temperate")
        .put("south", false)
        .put("neighbours", "sparse")
        .put("threshold", "kulhanek-2021");
  }

  private static ObjectNode saving(String version, ObjectNode washes) {
    ObjectNode body = OpenHives.object().put("version", version);
    body.set("washes", washes);
    body.set("place", place());
    body.putArray("plans");
    return body;
  }

  private static String version(OpenHives page) throws Exception {
    return page.asked("load", OpenHives.object()).path("version").asText();
  }

  @Test
  void whatIsSavedIsThereAgainAndTheLastVersionStays() throws Exception {
    Path folder = dir.resolve("not there yet");
    try (OpenHives page = new OpenHives(folder)) {
      String first =
          page.asked("save", saving(version(page), table("2026-05-02,Thornbank 1,1,302")))
              .path("version")
              .asText();
      page.asked(
          "save", saving(first, table("2026-05-02,Thornbank 1,1,302", "2026-07-25,=Thornbank,7,")));
      assertThat(folder.resolve("washes.csv"))
          .hasContent(
              "date,colony,mites,bees\r\n"
                  + "2026-05-02,Thornbank 1,1,302\r\n"
                  + "2026-07-25,=Thornbank,7,\r\n");
      assertThat(folder.resolve("washes.before.csv"))
          .hasContent("date,colony,mites,bees\r\n2026-05-02,Thornbank 1,1,302\r\n");
      JsonNode loaded = page.asked("load", OpenHives.object());
      assertThat(loaded.path("washes").path("rows").get(1).get(1).asText()).isEqualTo("=Thornbank");
      assertThat(loaded.path("study").path("climate").asText()).isEqualTo("temperate");
    }
  }

  private JsonNode loaded(OpenHives page) throws Exception {
    return page.asked("load", OpenHives.object());
  }

  /** What the page would send, had nothing been changed on it. */
  private ObjectNode unchanged(JsonNode loaded) {
    ObjectNode body = OpenHives.object().put("version", loaded.path("version").asText());
    JsonNode study = loaded.path("study");
    body.set("washes", loaded.path("washes"));
    body.set("treatments", loaded.path("treatments"));
    ObjectNode place = body.putObject("place");
    for (String name : List.of("climate", "south", "neighbours", "threshold")) {
      place.set(name, study.path(name));
    }
    place.set("supers", study.path("supers"));
    place.set("winterBees", study.path("winterBees"));
    body.set("plans", study.path("plans"));
    return body;
  }

  /** Remarks, columns, spelling and what parts the cells stay when the page saves. */
  @Test
  void whatTheUserWroteBesideStays() throws Exception {
    String washes =
        "\uFEFF# hive scale in kg\r\nDate;Colony;Mites;Bees;Hive weight;note\r\n"
            + "2026-05-02;Thornbank 1;1;302;31,5;\r\n";
    Files.writeString(dir.resolve("washes.csv"), washes);
    Files.writeString(dir.resolve("study.json"), REMARKED);
    try (OpenHives page = new OpenHives(dir)) {
      page.asked("save", unchanged(loaded(page)));
      assertThat(dir.resolve("washes.csv")).content().isEqualTo(washes);
      assertThat(dir.resolve("study.json")).content().isEqualTo(REMARKED);

      ObjectNode body = unchanged(loaded(page));
      ((ArrayNode) body.path("washes").path("rows").get(0)).set(2, "4");
      ((ObjectNode) body.path("place")).put("neighbours", "dense");
      ((ObjectNode) body.path("plans").get(0).path("controls").get(0)).put("start", "2026-08-20");
      assertThat(page.asked("save", body).path("lost")).isEmpty();
      assertThat(dir.resolve("washes.csv"))
          .content()
          .isEqualTo(washes.replace(";1;302;", ";4;302;"));
      assertThat(dir.resolve("study.json"))
          .content()
          .contains(
              "// A remark of the user's own.",
              "/* and a second */",
              "// The plan of last year.",
              "// As the club does it.",
              "// The end.",
              "\"dense\"",
              "2026-08-20")
          .doesNotContain("2026-08-18", "sparse");
    }
  }

  /** A remark that goes with what it speaks of is shown first; nothing is saved without a word. */
  @Test
  void remarksThatWouldBeLostAreSaidBeforeSaving() throws Exception {
    Files.writeString(dir.resolve("washes.csv"), "date,colony,mites,bees\n2026-05-02,A,1,302\n");
    Files.writeString(dir.resolve("study.json"), REMARKED);
    try (OpenHives page = new OpenHives(dir)) {
      ObjectNode body = unchanged(loaded(page));
      body.putArray("plans");
      JsonNode answer = page.asked("save", body);
      assertThat(answer.path("lost").toString()).contains("As the club does it");
      assertThat(dir.resolve("study.json")).content().isEqualTo(REMARKED);
      page.asked("save", body.put("withoutRemarks", true));
      assertThat(dir.resolve("study.json"))
          .content()
          .contains("A remark of the user's own", "The end.")
          .doesNotContain("thymol");
      assertThat(dir.resolve("study.before.json")).content().isEqualTo(REMARKED);
    }
  }

  /** What the page cannot show it does not replace. */
  @Test
  void aTableThatCannotBeReadIsNotReplaced() throws Exception {
    String broken = "date,colony,mites,bees\n2026-05-02,\"A,1,302\n";
    Files.writeString(dir.resolve("washes.csv"), broken);
    try (OpenHives page = new OpenHives(dir)) {
      JsonNode loaded = loaded(page);
      assertThat(loaded.path("washes").path("fault").asText()).contains("quotation mark");
      HttpResponse<String> answer =
          page.post(
              "save",
              saving(loaded.path("version").asText(), table("2026-05-02,Thornbank 1,1,302")));
      assertThat(answer.statusCode()).isEqualTo(422);
      assertThat(dir.resolve("washes.csv")).content().isEqualTo(broken);
    }
  }

  /** A second page, or a command, that changed the files is noticed, and nothing is overwritten. */
  @Test
  void filesThatSomebodyElseChangedAreLeftAlone() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      String old = version(page);
      Files.writeString(dir.resolve("washes.csv"), "date,colony,mites,bees\n2026-06-01,X,1,300\n");
      HttpResponse<String> answer =
          page.post("save", saving(old, table("2026-05-02,Thornbank 1,1,302")));
      assertThat(answer.statusCode()).isEqualTo(409);
      assertThat(answer.body()).contains("changed by another page or program");
      assertThat(dir.resolve("washes.csv")).content().contains("2026-06-01,X");
      assertThat(dir.resolve("study.json")).doesNotExist();
    }
  }

  @Test
  void faultsStandBesideTheirRowAndADateOffersBothReadings() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      ObjectNode body = OpenHives.object();
      body.set("washes", table("03/04/2026,A,2,300", "04/05/2026,A,three,300"));
      JsonNode found = page.asked("check", body).path("washes");
      assertThat(found.path("faults")).hasSize(2);
      JsonNode date = found.path("faults").get(0);
      assertThat(date.path("row").asInt()).isZero();
      assertThat(date.path("readings").findValuesAsText("date"))
          .containsExactly("2026-04-03", "2026-03-04");
      assertThat(found.path("faults").get(1).path("row").asInt()).isEqualTo(1);
      assertThat(found.path("said").get(0).asText()).startsWith("0.67 per 100");
      HttpResponse<String> refused =
          page.post("save", saving(version(page), table("2026-05-02,A,three,300")));
      assertThat(refused.statusCode()).isEqualTo(422);
      assertThat(dir.resolve("washes.csv")).doesNotExist();
    }
  }

  @Test
  void answersLeadToAClimateAndWhatIsNoAnswerIsRefused() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      assertThat(page.asked("load", OpenHives.object()).path("questions")).hasSize(5);
      ObjectNode body = OpenHives.object();
      body.putObject("answers").put("winter-bees", "09-25").put("summer-high", "33");
      JsonNode found = page.asked("place", body);
      assertThat(found.path("climate").asText()).isEqualTo("warm-temperate");
      assertThat(found.path("sentences").get(1).asText()).contains("agrees");
      body.putObject("answers").put("winter-bees", "soon");
      HttpResponse<String> refused = page.post("place", body);
      assertThat(refused.statusCode()).isEqualTo(400);
      assertThat(refused.body()).contains("08-20");
      body.putObject("answers");
      assertThat(page.asked("place", body).has("climate")).isFalse();
    }
  }

  @Test
  void rowsWithoutAHeaderAreTakenInTheUsualOrder() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      JsonNode found =
          page.asked("paste", OpenHives.object().put("text", "2026-05-02\tThornbank 1\t1\t302\n"));
      assertThat(found.path("columns").get(1).asText()).isEqualTo("colony");
      assertThat(found.path("rows").get(0).get(3).asText()).isEqualTo("302");
    }
  }

  @Test
  void onlyThePageItselfMaySend() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      String self = page.address().toString().replaceFirst("/$", "");
      assertThat(status(page, page.request("load", "{}").setHeader("Origin", "http://evil.test")))
          .isEqualTo(403);
      assertThat(status(page, page.request("load", "{}").setHeader("X-Broodtide-Token", "0")))
          .isEqualTo(403);
      assertThat(status(page, page.request("load", "{}").setHeader("Content-Type", "text/plain")))
          .isEqualTo(415);
      assertThat(status(page, page.request("load", "[]"))).isEqualTo(400);
      assertThat(status(page, page.request("load", "{\"a\":\"" + "x".repeat(1_000_000) + "\"}")))
          .isEqualTo(413);
      assertThat(status(page, page.request("load", "{}").GET())).isEqualTo(404);
      HttpRequest bare =
          HttpRequest.newBuilder(page.address().resolve("/api/hives/load"))
              .header("Origin", self)
              .POST(HttpRequest.BodyPublishers.ofString("{}"))
              .build();
      assertThat(page.send(bare).statusCode()).isEqualTo(403);
      assertThat(status(page, page.request("load", "{}"))).isEqualTo(200);
      assertThat(page.troubles()).isEmpty();
    }
  }

  private static int status(OpenHives page, HttpRequest.Builder request) throws Exception {
    return page.send(request.build()).statusCode();
  }

  /** A new question ends the one before; work that is stopped ends. */
  @Test
  void aPageHasOneAnswerAtATime() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      page.asked("save", saving(version(page), table("2026-07-25,Thornbank 1,4,302")));
      ObjectNode ask = OpenHives.object().put("page", "one").put("what", "stand");
      long first = page.asked("work", ask).path("job").asLong();
      JsonNode second = page.asked("work", ask);
      assertThat(second.path("job").asLong()).isGreaterThan(first);
      JsonNode stopped = page.asked("cancel", OpenHives.object().put("page", "one"));
      assertThat(stopped.path("state").asText()).isEqualTo("stopped");
      JsonNode refused = page.worked(OpenHives.object().put("what", "plans").put("hive", "Nobody"));
      assertThat(refused.path("state").asText()).isEqualTo("refused");
      assertThat(page.troubles()).isEmpty();
    }
  }

  @Test
  void daysForACalendarAreReadByAStrictReader() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      String name = "Thornbank; \u00fcber, \\ " + "long ".repeat(12) + "1";
      page.asked("save", saving(version(page), quoted(name)));
      JsonNode made = page.asked("calendar", OpenHives.object());
      CalendarReader read = CalendarReader.read(made.path("text").asText());
      assertThat(read.of("SUMMARY")).containsExactly("Wash: " + name);
      assertThat(read.of("DTSTART")).containsExactly("20260822");
      assertThat(read.of("DTEND")).containsExactly("20260823");
    }
  }

  /** Strips go in and come out, each cut has its day, and each day says what to beware of. */
  @Test
  void everyDayOfAPlanIsAnEventWithItsCautions() throws Exception {
    String study =
        REMARKED.replace(
            "{\"use\": \"thymol\", \"start\": \"2026-08-18\"}",
            "{\"use\": \"drone-comb\", \"start\": \"2026-05-02\"},"
                + "{\"use\": \"thymol\", \"start\": \"2026-08-18\"},"
                + "{\"use\": \"oxalic-vapour\", \"start\": \"2026-11-20\","
                + " \"applications\": 3, \"every\": 5}");
    Files.writeString(dir.resolve("study.json"), study);
    Files.writeString(
        dir.resolve("washes.csv"), "date,colony,mites,bees\n2026-07-25,Thornbank 1,4,302\n");
    try (OpenHives page = new OpenHives(dir)) {
      JsonNode made = page.asked("calendar", OpenHives.object().put("plan", "August"));
      CalendarReader read = CalendarReader.read(made.path("text").asText());
      assertThat(read.of("DTSTART"))
          .containsExactly(
              "20260822",
              "20260502",
              "20260530",
              "20260627",
              "20260818",
              "20260902",
              "20260917",
              "20261120",
              "20261125",
              "20261130");
      assertThat(read.of("SUMMARY"))
          .contains(
              "Thymol, two doses: put in, 1 of 2",
              "Thymol, two doses: replace, 2 of 2",
              "Thymol, two doses: take out what is left, as the label says",
              "Oxalic acid, vaporised: treat, 3 of 3");
      List<String> words = read.of("DESCRIPTION");
      assertThat(words.get(0)).contains("Look for the queen first", "lit smoker");
      assertThat(words.subList(1, 4)).allMatch(w -> w.contains("knife"));
      assertThat(words.subList(4, 7)).allMatch(w -> w.contains("Irritates skin and eyes"));
      assertThat(words.subList(7, 10)).allMatch(w -> w.contains("respirator"));
      assertThat(words.subList(1, 10)).allMatch(w -> w.contains("not instructions"));
    }
  }

  private static ObjectNode quoted(String name) {
    ObjectNode out = table("2026-07-25,x,4,302");
    ((ArrayNode) out.path("rows").get(0)).set(1, name);
    return out;
  }

  @Test
  void namesAreEscapedInWhatIsShown() throws Exception {
    try (OpenHives page = new OpenHives(dir)) {
      String name = "<img src=x onerror=alert(1)>";
      page.asked("save", saving(version(page), quoted(name)));
      JsonNode done = page.worked(OpenHives.object().put("what", "stand"));
      assertThat(done.path("state").asText()).isEqualTo("done");
      assertThat(done.path("answer").path("sheet").asText())
          .contains("&lt;img")
          .doesNotContain("<img");
      assertThat(done.path("answer").path("hives").get(0).path("season").asText())
          .doesNotContain("<img");
      assertThat(new String(Files.readAllBytes(dir.resolve("washes.csv")), StandardCharsets.UTF_8))
          .contains(name);
    }
  }
}
