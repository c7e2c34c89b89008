package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No estimate has digits that mean nothing: two in tables and pictures, four in results.json. */
class DigitsTest {
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);

  private static final Pattern CELL = Pattern.compile("(?<=^|,)-?\\d+(?:\\.\\d+)?(?=,|\\r?$)");

  /** A figure with a decimal point as people read it, and one so small that none can mean it. */
  private static final Pattern SMALL = Pattern.compile("\\b0\\.00\\d+|\\d[eE]-\\d");

  @TempDir private Path folder;

  private static int digits(BigDecimal value) {
    return value.signum() == 0 ? 1 : value.stripTrailingZeros().precision();
  }

  private static void decimals(JsonNode node, String path, List<String> out) {
    if (node.isFloatingPointNumber() && digits(node.decimalValue()) > 4) {
      out.add(path + " " + node);
    }
    node.properties().forEach(f -> decimals(f.getValue(), path + "/" + f.getKey(), out));
    if (node.isArray()) {
      node.forEach(item -> decimals(item, path, out));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"0,0,0", "20,80,210"})
  void ofPlans(String counts) throws IOException {
    String[] mites = counts.split(",");
    String washes =
        "date,colony,mites,bees\n2025-05-24,Elm,%s,300\n2025-06-27,Elm,%s,300\n2025-07-25,Elm,%s,300\n"
            .formatted((Object[]) mites);
    Trial trial =
        Trial.run(
            washes,
            ("compare - --climate temperate --colonies 64 --quiet --out " + folder).split(" "));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    assertThat(SMALL.matcher(trial.out()).results().map(m -> m.group())).isEmpty();
    List<String> wordy = new ArrayList<>();
    for (String table : List.of("plans.csv", "season.csv")) {
      for (String line : Files.readAllLines(folder.resolve(table))) {
        Matcher cell = CELL.matcher(line);
        while (cell.find()) {
          if (digits(new BigDecimal(cell.group())) > 2) {
            wordy.add(table + " " + cell.group());
          }
        }
      }
    }
    decimals(JSON.readTree(folder.resolve("results.json").toFile()), "", wordy);
    assertThat(wordy).isEmpty();
    for (String page : List.of("report.html", "compare.svg", "windows.svg", "sensitivity.svg")) {
      String words =
          Files.readString(folder.resolve(page))
              .replaceAll("(?s)<style\\b.*?</style>", " ")
              .replaceAll("<[^>]*>", " ");
      assertThat(SMALL.matcher(words).results().map(m -> m.group())).as(page).isEmpty();
    }
  }
}
