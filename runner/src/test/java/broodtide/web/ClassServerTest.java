package broodtide.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.Catalog;
import broodtide.classroom.OpenPage;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.lesson.Lessons;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.http.HttpHeaders;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the page answers to those who mean well. */
class ClassServerTest {
  private static OpenPage page;

  @BeforeAll
  static void open() throws IOException {
    page = new OpenPage();
  }

  @AfterAll
  static void close() {
    assertThat(page.troubles()).isEmpty();
    page.close();
  }

  static List<String> lessons() {
    return Lessons.SHELF.names();
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/lessons", "/explore"})
  void pagesAreWholeAndCautious(String path) throws Exception {
    HttpResponse<String> response = page.get(path);
    assertThat(response.statusCode()).isEqualTo(200);
    assertThat(response.body())
        .startsWith("<!doctype html>")
        .contains("never instructions to treat", "label and local law decide")
        .doesNotContain("{{", "http://", "https://", "style=", "onclick");
    everythingNamedIsThere(response.body());
  }

  /** Addresses of the explorer that were saved when the page still opened on it. */
  @Test
  void opensOnTheLessonsAndKeepsSavedAddresses() throws Exception {
    assertThat(page.get("/").body()).isEqualTo(page.get("/lessons").body());
    String saved = "?mites=2&a=thymol@2026-08-05";
    assertThat(page.get("/" + saved).body())
        .isEqualTo(page.get("/explore" + saved).body())
        .contains("5 August: Thymol");
  }

  /** No figure that a lesson reads out is missing, as it is on days when its colony is lost. */
  @ParameterizedTest
  @MethodSource("lessons")
  void everyFigureOfALessonIsANumber(String name) throws Exception {
    JsonNode figures = page.json("/api/lessons/" + name).path("figures");
    assertThat(figures).isNotEmpty();
    assertThat(figures.findValuesAsText("value")).allMatch(v -> v.matches("[0-9].*"));
  }

  /** Learners mark what they believe of the efficacy; what the washes say is the teacher's. */
  @Test
  void efficacyIsGuessedOnTheWorksheetAndShownToTheTeacherAlone() throws Exception {
    String body = page.get("/lessons/did-it-work/worksheet").body();
    int answers = body.indexOf("class=\"leaf answers\"");
    String learners = body.substring(0, answers);
    assertThat(learners)
        .contains("An empty scale from 0 to 100 % for each hive", "Hive A: 24 in 300 on 31 July")
        .doesNotContain("with the washes", "Worked as expected", "Cannot tell");
    assertThat(body.substring(answers))
        .contains("Hive A: % of all mites taken by 15 Sep", "Hive B: % of all mites taken")
        .contains("before the washes", "with the washes", "Worked as expected", "Cannot tell");
    assertThat(page.get("/lessons/unknowns/worksheet").body()).doesNotContain("An empty scale");
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void lessonsDoNotGiveTheAnswerAway(String name) throws Exception {
    HttpResponse<String> response = page.get("/lessons/" + name);
    assertThat(response.statusCode()).isEqualTo(200);
    String reveal = page.json("/api/lessons/" + name).path("reveal").asText();
    assertThat(response.body()).doesNotContain(Html.text(reveal).markup(), "because");
    everythingNamedIsThere(response.body());
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void worksheetsHaveTheAnswersOnASheetOfTheirOwn(String name) throws Exception {
    String body = page.get("/lessons/" + name + "/worksheet").body();
    int answers = body.indexOf("class=\"leaf answers\"");
    assertThat(answers).isPositive();
    String reveal = Html.text(page.json("/api/lessons/" + name).path("reveal").asText()).markup();
    assertThat(body.indexOf(reveal)).isGreaterThan(answers);
    assertThat(body).contains("<svg xmlns").doesNotContain("style=");
    everythingNamedIsThere(body);
  }

  /** Every file and page that a page names is sent with the right type. */
  private static void everythingNamedIsThere(String body) throws Exception {
    Matcher named = Pattern.compile("(?:href|src)=\"(/[^\"#]*)\"").matcher(body);
    Map<String, String> types =
        Map.of("css", "text/css", "js", "text/javascript", "svg", "image/svg+xml");
    for (String path : new TreeSet<>(named.results().map(m -> m.group(1)).toList())) {
      HttpResponse<String> response = page.get(path.replace("&amp;", "&"));
      assertThat(response.statusCode()).as(path).isEqualTo(200);
      String end = path.substring(path.lastIndexOf('.') + 1);
      assertThat(response.headers().firstValue("Content-Type").orElse(""))
          .as(path)
          .startsWith(
              path.startsWith("/api/inside")
                  ? "image/svg+xml"
                  : types.getOrDefault(end, "text/html"));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/", "/api/season", "/static/chart.js", "/nothing", "/api/season?mites=x"})
  void everyAnswerIsGuarded(String path) throws Exception {
    HttpResponse<String> response = page.get(path);
    HttpHeaders headers = response.headers();
    assertThat(headers.firstValue("Content-Security-Policy").orElse(""))
        .startsWith("default-src 'self'");
    assertThat(headers.firstValue("X-Content-Type-Options")).contains("nosniff");
    assertThat(headers.firstValue("Cache-Control")).contains("no-store");
    assertThat(headers.firstValue("Access-Control-Allow-Origin")).isEmpty();
  }

  /** The page shows what the engine itself plays. */
  @Test
  void explorerPlaysTheEngine() throws Exception {
    JsonNode season = page.json("/api/season?climate=boreal&mites=2&brood=1.2");
    Trajectory engine =
        DailyEngine.run(
            new Scenario(
                ColonyModel.in(Catalog.climate("boreal")),
                Plan.waiting("w"),
                LocalDate.of(2026, 3, 1),
                395),
            new SimulatedColony(1.2, 1, 2, 1, 1, List.of()));
    double[] bees = engine.of(Quantity.ADULTS);
    double[] onBees = engine.of(Quantity.MITES_ON_BEES);
    for (int day = 0; day < 200; day += 20) {
      assertThat(season.at("/scenarios/0/series/bees/" + day).asDouble())
          .isBetween(0.999 * bees[day], 1.001 * bees[day]);
      assertThat(season.at("/scenarios/0/series/onBees/" + day).asDouble())
          .isBetween(0.999 * onBees[day], 1.001 * onBees[day]);
    }
    assertThat(season.at("/end").asText()).isEqualTo("2027-03-31");
  }

  @ParameterizedTest
  @CsvSource({
    "mites=1, mites=0.5",
    "mites=0.5&arrivals=10, mites=0.5",
    "mites=0.5, mites=0.5&a=drone-comb-part@2026-04-25",
    "mites=0.5&a=drone-comb-part@2026-04-25, mites=0.5&a=drone-comb@2026-04-25",
    "mites=0.5, mites=0.5&a=thymol@2026-08-15",
    "mites=0.5&a=thymol@2026-10-15, mites=0.5&a=thymol@2026-08-15"
  })
  void everyDialTurnsTheRightWay(String more, String fewer) throws Exception {
    int september = 199;
    assertThat(mites(more, september)).isGreaterThan(mites(fewer, september));
  }

  private static double mites(String query, int day) throws Exception {
    JsonNode season = page.json("/api/season?" + query);
    double mites = 0;
    for (String where : List.of("onBees", "inWorker", "inDrone")) {
      mites += season.at("/scenarios/0/series/" + where + "/" + day).asDouble();
    }
    return mites;
  }

  @Test
  void aLostColonyEndsItsCurvesAndNothingIsReadBeyondWhatAWashTells() throws Exception {
    JsonNode season = page.json("/api/season?mites=10").at("/scenarios/0");
    int days = season.at("/series/bees").size();
    assertThat(days).isLessThan(395);
    assertThat(season.at("/series/bees/" + (days - 1)).asDouble()).isBetween(1000.0, 3000.0);
    assertThat(season.at("/outcome").asText()).endsWith("more likely dead than alive.");
    assertThat(season.at("/wash").asText() + page.get("/explore?mites=10").body())
        .doesNotContainPattern("finds about (1[6-9]|[2-9][0-9])[0-9] mites");
  }

  /** Winter loss is that of the same season in the lessons, which is that of the program. */
  @Test
  void winterLossAndInfestedBroodAreSaid() throws Exception {
    String said = page.json("/api/season?mites=0.5").at("/scenarios/0/winter").asText();
    assertThat(said).matches("Infested winter-bee brood \\d+ %; winter loss \\d+ %\\.");
    String treated =
        page.json("/api/season?mites=0.5&a=thymol@2026-08-05").at("/scenarios/0/winter").asText();
    assertThat(percents(treated).get(1)).isLessThan(percents(said).get(1));
  }

  private static List<Integer> percents(String text) {
    return Pattern.compile("(\\d+) %")
        .matcher(text)
        .results()
        .map(m -> Integer.valueOf(m.group(1)))
        .toList();
  }

  @Test
  void subtropicalMonthsAfterOctoberAreNotShownAndThePageSaysWhy() throws Exception {
    JsonNode season = page.json("/api/season?climate=subtropical").at("/scenarios/0");
    assertThat(season.at("/series/infestation").size()).as("1 March to 31 October").isEqualTo(245);
    assertThat(season.path("beyond").asText()).isEqualTo("not shown");
    assertThat(season.path("winter").asText()).isEmpty();
    assertThat(season.path("outcome").asText())
        .startsWith("On 31 October")
        .contains("mites after October", "not shown for this climate");
  }

  /** Efficacies come from the control's file, as an interval. */
  @Test
  void actionsAreSentencesWithTheEfficacyAsAnInterval() throws Exception {
    for (String name : Catalog.CONTROLS.names()) {
      JsonNode action =
          page.json("/api/season?a=" + name + "@2026-07-10").at("/scenarios/0/actions/0");
      String words = action.path("words").asText();
      assertThat(words).startsWith("10 July: " + Catalog.control(name).title());
      assertThat(words.contains("In trials it killed"))
          .isEqualTo(Catalog.control(name).efficacy().isPresent());
    }
    assertThat(page.json("/api/season?a=thymol@2026-08-05").toString())
        .containsPattern("killed \\d+ to \\d+ % of the mites \\(90 % interval");
  }

  /** Half a year later everything is the same. */
  @Test
  void southOfTheEquatorTheYearIsTurned() throws Exception {
    JsonNode north = page.json("/api/season?mites=1&a=thymol@2026-08-10");
    JsonNode south = page.json("/api/season?mites=1&south=yes&a=thymol@2027-02-10");
    assertThat(south.path("start").asText()).isEqualTo("2026-09-01");
    double there = south.at("/scenarios/0/series/onBees/200").asDouble();
    double here = north.at("/scenarios/0/series/onBees/200").asDouble();
    assertThat(there).isBetween(0.7 * here, 1.4 * here);
  }

  @Test
  void objectionsAndCautionsAreSaid() throws Exception {
    JsonNode season =
        page.json("/api/season?a=thymol@2026-06-01,formic-strips@2026-07-10").at("/scenarios/0");
    assertThat(season.path("notes").toString())
        .contains("supers are usually on", "label decides", "respirator for acid vapour");
    assertThat(page.json("/api/season").at("/scenarios/0/notes")).isEmpty();
  }

  /** Without a script the form adds an action, keeps the others, and says what comes of it. */
  @Test
  void theFormWorksWithoutAScript() throws Exception {
    String body =
        page.get("/explore?a=thymol@2026-08-05&add=drone-comb&on=2026-04-20&to=b&mites=1").body();
    assertThat(body)
        .contains(
            "Season A",
            "Season B",
            "5 August: Thymol",
            "20 April: Drone comb",
            "name=\"b\" value=\"drone-comb@2026-04-20\"",
            "/api/inside?climate=temperate")
        .contains("winter loss");
  }

  @Test
  void washesDependOnTheSeedAlone() throws Exception {
    String path = "/api/lessons/one-wash/washes?seed=";
    assertThat(page.json(path + 7)).isEqualTo(page.json(path + 7));
    assertThat(page.json(path + 7)).isNotEqualTo(page.json(path + 8));
    assertThat(page.json(path + 7).path("counts")).hasSize(20);
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void learnersAreCautionedOnPageAndSheet(String name) throws Exception {
    String sheet = page.get("/lessons/" + name + "/worksheet").body();
    String pupils = sheet.substring(0, sheet.indexOf("class=\"leaf answers\""));
    assertThat(pupils).contains("never instructions to treat");
    Optional<String> caution = Lessons.named(name).caution().map(c -> Html.text(c).markup());
    assertThat(pupils.contains("Note:")).isEqualTo(caution.isPresent());
    String lesson = page.get("/lessons/" + name).body();
    assertThat(caution.stream()).allSatisfy(words -> assertThat(pupils).contains(words));
    assertThat(caution.stream()).allSatisfy(words -> assertThat(lesson).contains(words));
  }

  @Test
  void onlyThisMachineCanReachIt() throws Exception {
    assertThat(page.address().getHost()).isEqualTo("127.0.0.1");
    for (NetworkInterface each : NetworkInterface.networkInterfaces().toList()) {
      for (InetAddress address : each.inetAddresses().toList()) {
        if (!address.isLoopbackAddress() && !address.isLinkLocalAddress()) {
          assertThatThrownBy(() -> new Socket(address, page.port()).close())
              .isInstanceOf(ConnectException.class);
        }
      }
    }
  }

  @Test
  void headIsAnsweredWithoutABody() throws Exception {
    String answer =
        page.raw(
            "HEAD / HTTP/1.1\r\nHost: localhost:" + page.port() + "\r\nConnection: close\r\n\r\n");
    assertThat(answer).startsWith("HTTP/1.1 200").endsWith("\r\n\r\n");
  }
}
