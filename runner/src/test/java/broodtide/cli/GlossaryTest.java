package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.words.Glossary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A report explains at its foot the terms that it uses, and no others. */
class GlossaryTest {
  /** A term as it stands in a text, and under which word its glossary explains it. */
  private static final Map<String, String> TERMS =
      Map.ofEntries(
          Map.entry("90 % interval", "90 % interval"),
          Map.entry("brood", "Brood"),
          Map.entry("broodless", "Broodless"),
          Map.entry("capped", "Capped"),
          Map.entry("colony strength", "Colony strength"),
          Map.entry("controls", "Control"),
          Map.entry("decision date", "Decision date"),
          Map.entry("drone comb", "Drone comb"),
          Map.entry("efficacy", "Efficacy"),
          Map.entry("infestation", "Infestation"),
          Map.entry("laying factor", "Laying factor"),
          Map.entry("median", "Median"),
          Map.entry("reinvasion", "Reinvasion"),
          Map.entry("reproduction factor", "Reproduction factor"),
          Map.entry("simulated colonies", "Simulated colony"),
          Map.entry("supers", "Super"),
          Map.entry("treatment threshold", "Treatment threshold"),
          Map.entry("wash", "Mite wash"),
          Map.entry("washes", "Mite wash"),
          Map.entry("winter bees", "Winter bees"),
          Map.entry("winter loss", "Winter loss"),
          Map.entry("winter-bee brood", "Winter-bee brood"),
          Map.entry("yards", "Yard"));

  private static final String WASHES =
      """
      date,colony,mites,bees
      2025-06-10,Left,1,310
      2025-07-08,Left,6,295
      2025-08-09,Left,14,300
      """;

  private static final Pattern SECTION =
      Pattern.compile("<section class=\"glossary\">.*?</section>", Pattern.DOTALL);

  @TempDir private Path folder;

  private static String words(String html) {
    return html.replaceAll("(?s)<style\\b.*?</style>", " ")
        .replaceAll("<[^>]*>", " ")
        .replaceAll("\\s+", " ");
  }

  private static boolean holds(String text, String term) {
    return Pattern.compile("\\b" + Pattern.quote(term) + "\\b", Pattern.CASE_INSENSITIVE)
        .matcher(text)
        .find();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "growth - --climate temperate",
        "compare - --climate temperate --colonies 64 --quiet",
        "windows - --climate temperate --colonies 64 --quiet",
        "worked - --climate temperate --colonies 64 --quiet --treated 2025-07-10 --with thymol"
      })
  void everyTermOfAReport(String call) throws IOException {
    Trial trial = Trial.run(WASHES, (call + " --out " + folder).split(" "));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    String html = Files.readString(folder.resolve("report.html"));
    Matcher section = SECTION.matcher(html);
    assertThat(section.find()).isTrue();
    List<String> explained = new ArrayList<>();
    Matcher entry = Pattern.compile("<dt>(.*?)</dt>").matcher(section.group());
    while (entry.find()) {
      explained.add(entry.group(1));
    }
    assertThat(explained).isSorted().doesNotHaveDuplicates();
    String whole = words(html);
    TERMS.forEach(
        (term, word) -> {
          if (holds(whole, term)) {
            assertThat(explained).as(term).contains(word);
          }
        });
    // An entry is there for a word of the page or of another entry, not for its own sake.
    for (Glossary.Entry used : Glossary.ALL) {
      String own = "(?s)<div><dt>" + Pattern.quote(used.term()) + "</dt>.*?</div>";
      assertThat(used.in(words(html.replaceAll(own, " "))))
          .as(used.term())
          .isEqualTo(explained.contains(used.term()));
    }
  }

  @Test
  void meaningsExplainTheirOwnTermsToo() {
    assertThat(Glossary.of("A 90 % interval.").stream().map(Glossary.Entry::term))
        .containsExactly("90 % interval", "Simulated colony");
    assertThat(Glossary.of("Nothing of the trade.")).isEmpty();
    for (Glossary.Entry entry : Glossary.ALL) {
      assertThat(LongSentences.of(entry.meaning())).isEmpty();
    }
  }
}
