package broodtide.compare;

import broodtide.compare.EfficacyFit.Against;
import broodtide.compare.EfficacyFit.Setting;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.engine.ColonyModel;
import broodtide.season.Climate;
import broodtide.season.Curve;
import broodtide.season.YearSpan;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The shipped climates and controls, read bare: tests of the files themselves need no more. */
final class Shipped {
  private static final Path LIBRARY = Path.of("library");
  private static final ObjectMapper JSON = new ObjectMapper();

  /** A year like any other, for settings that name a day of the year only. */
  static final int YEAR = 2001;

  private Shipped() {}

  static ColonyModel model(String climate) {
    JsonNode n = tree("climates", climate);
    return ColonyModel.in(
        new Climate(
            n.get("name").asText(),
            n.get("title").asText(),
            curve(n.get("laying")),
            curve(n.get("droneShare")),
            curve(n.get("winterShare")),
            curve(n.get("springRelease")),
            curve(n.get("warmth")),
            span(n.get("supers")),
            span(n.get("winterBees")),
            false,
            List.of()));
  }

  /** Names of all control files of a kind, in order. */
  static List<String> controls(String kind) {
    try (Stream<Path> files = Files.list(LIBRARY.resolve("controls"))) {
      return files
          .map(f -> f.getFileName().toString().replace(".json", ""))
          .filter(name -> control(name).get("kind").asText().equals(kind))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static JsonNode control(String name) {
    return tree("controls", name);
  }

  static Miticide substance(String name) {
    JsonNode n = control(name);
    return new Miticide(
        n.get("name").asText(),
        n.get("days").asInt(),
        n.get("onBees").asDouble(),
        n.get("inCells").asDouble(),
        n.get("beeCost").asDouble(),
        n.get("broodCost").asDouble(),
        n.get("coolest").asDouble(),
        n.get("warmest").asDouble(),
        Miticide.SupersRule.valueOf(n.get("supers").asText()));
  }

  /** The course as the file gives it, begun on a day. */
  static MiticideCourse course(String name, LocalDate start) {
    JsonNode n = control(name);
    return new MiticideCourse(
        name, substance(name), start, n.get("applications").asInt(), n.get("every").asInt());
  }

  /** The setting in which the file's efficacy was measured. */
  static Setting setting(String name) {
    JsonNode n = control(name).get("efficacy").get("setting");
    return Setting.quiet(
        model(n.get("climate").asText()),
        MonthDay.parse("--" + n.get("date").asText()).atYear(YEAR),
        n.get("broodless").asBoolean(),
        n.get("measuredAfter").asInt(),
        Against.valueOf(n.get("against").asText().toUpperCase(Locale.ROOT)));
  }

  private static JsonNode tree(String folder, String name) {
    try {
      return JSON.readTree(LIBRARY.resolve(folder).resolve(name + ".json").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Curve curve(JsonNode n) {
    List<Curve.Knot> knots = new ArrayList<>();
    n.properties()
        .forEach(
            e ->
                knots.add(
                    new Curve.Knot(MonthDay.parse("--" + e.getKey()), e.getValue().asDouble())));
    knots.sort(Comparator.comparing(Curve.Knot::day));
    return Curve.through(knots);
  }

  private static YearSpan span(JsonNode n) {
    return new YearSpan(
        MonthDay.parse("--" + n.get(0).asText()), MonthDay.parse("--" + n.get(1).asText()));
  }
}
