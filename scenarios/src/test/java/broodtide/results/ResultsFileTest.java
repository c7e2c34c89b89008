package broodtide.results;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Outcome;
import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.wash.Wash;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Results held against their own schema by an independent validator. */
@Tag("outside")
class ResultsFileTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static String text = "";

  @BeforeAll
  static void play() {
    Study study = Studies.named("larkmeadow");
    LocalDate start = study.start();
    ColonyCase c =
        new ColonyCase(
            "Alder",
            study.model(),
            start,
            start.plusDays(61),
            study.until(),
            List.of(
                Wash.of(start, "Alder", 1, 300), Wash.ofHalfCup(start.plusDays(60), "Alder", 4)),
            study.given(),
            study.thresholds().value(),
            Priors.defaults());
    List<Plan> plans = study.plans();
    ResultsFile file = new ResultsFile("compare", "1.2.3", 7, 64, List.of("A note."));
    try (Workers workers = new Workers(1)) {
      SeasonPosterior.SamplerSettings effort = new SeasonPosterior.SamplerSettings(64, 1, 7);
      SeasonPosterior posterior = c.posterior(effort, workers, Progress.NONE);
      Comparison comparison = Comparison.of(c, posterior, plans, workers, Progress.NONE);
      Windows windows =
          WindowSearch.of(
              c,
              posterior,
              List.of(
                  Catalog.control("thymol"),
                  Catalog.control("oxalic-dribble"),
                  Catalog.control("formic-strips")),
              List.of(c.now(), c.now().plusDays(7), c.now().plusDays(60), c.now().plusDays(90)),
              Outcome.WINTER_BROOD,
              workers,
              Progress.NONE);
      file.add(ColonyResult.of(comparison, Optional.of(windows), workers));
    }
    text = file.text();
  }

  @Test
  void keepToTheSchema() throws Exception {
    assertThat(errors(ResultsFile.schema(), JSON.readTree(text))).isEmpty();
  }

  @Test
  void holdNoFieldThatTheSchemaDoesNotDescribe() throws Exception {
    JsonNode strict = closed(JSON.readTree(ResultsFile.schema()));
    assertThat(errors(strict.toString(), JSON.readTree(text))).isEmpty();
  }

  /** Labels of formic acid may allow supers, so it is open while they stand, and marked. */
  @Test
  void sayWhereTheLabelDecides() throws Exception {
    JsonNode cells = JSON.readTree(text).at("/colonies/0/windows/controls/2/cells");
    assertThat(cells).hasSize(4);
    for (JsonNode cell : cells) {
      LocalDate day = LocalDate.parse(cell.get("start").textValue());
      boolean supers = !day.isAfter(LocalDate.of(day.getYear(), 8, 20)); // cool maritime
      assertThat(cell.path("labelDecides").asBoolean(supers)).as("%s", cell).isEqualTo(supers);
    }
    assertThat(cells.get(0).get("labelDecides").booleanValue()).isTrue();
    assertThat(cells.get(3).get("labelDecides").booleanValue()).isFalse();
  }

  /** The schema would be worthless if it took anything. */
  @ParameterizedTest
  @CsvSource({
    "'', format, '\"other\"'",
    "'', seed, '\"1\"'",
    "/colonies/0, now, '\"yesterday\"'",
    "/colonies/0/washes/0, mites, -1",
    "/colonies/0/washes/0, method, '\"guess\"'",
    "/colonies/0/plans/0, chanceDiedOut, 1.5",
    "/colonies/0/plans/0/whenRaised, day, '\"soon\"'",
    "/colonies/0/windows, outcome, '\"honey\"'",
    "/colonies/0/windows/controls/0/cells/0, start, 3",
    "/colonies/0/windows/controls/2/cells/0, labelDecides, '\"no\"'",
    "/colonies/0/plans/0/infestationAtEnd, q95, -1",
    "/colonies/0/plans/0/winter, meanChanceLost, -0.1",
    "/colonies/0/plans/0/infestationAgainstWait, chanceBetter, 2",
    "/colonies/0/plans/0/dayOverThreshold, median, 5",
    "/colonies/0/plans/0/series/3, infestation, 2",
    "/colonies/0/unknowns/0, shrinkage, 2"
  })
  void wrongValuesAreFound(String where, String field, String value) throws Exception {
    JsonNode root = JSON.readTree(text);
    ObjectNode node = (ObjectNode) root.at(where);
    assertThat(node.has(field)).isTrue();
    node.set(field, JSON.readTree(value));
    assertThat(errors(ResultsFile.schema(), root)).isNotEmpty();
    node.remove(field);
    assertThat(errors(ResultsFile.schema(), root)).isNotEmpty();
  }

  @Test
  void numbersArePlain() {
    assertThat(text).doesNotContainPattern("\\d[eE][+-]?\\d");
  }

  private static List<Error> errors(String schema, JsonNode value) {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(schema)
        .validate(value, context -> context.executionConfig(c -> c.formatAssertionsEnabled(true)));
  }

  /** The same schema, taking no field that it does not name. */
  private static JsonNode closed(JsonNode node) {
    if (node instanceof ObjectNode object
        && object.path("properties").isObject()
        && object.path("type").asText().equals("object")) {
      object.put("unevaluatedProperties", false);
    }
    node.forEach(ResultsFileTest::closed);
    return node;
  }
}
