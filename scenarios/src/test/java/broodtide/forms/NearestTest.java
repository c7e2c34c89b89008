package broodtide.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
  /** The textbook pairs of Levenshtein's and Damerau's distances, common knowledge, no source. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({"kitten, sitting, 3", "saturday, sunday, 3", "flaw, lawn, 2", "ca, ac, 1", "a, a, 0"})
  void knownDistances(String a, String b, int edits) {
    assertThat(Nearest.distance(a, b)).isEqualTo(edits);
    assertThat(Nearest.distance(b, a)).isEqualTo(edits);
  }

  @Test
  void onlyNearWordsAreOffered() {
    List<String> known = List.of("temperate", "boreal", "to");
    assertThat(Nearest.to("Temperat", known)).contains("temperate");
    assertThat(Nearest.to("boreale", known)).contains("boreal");
    assertThat(Nearest.to("xyz", known)).isEmpty();
    assertThat(Nearest.to("ab", known)).isEmpty();
    assertThat(Nearest.to("t".repeat(100_000), known)).isEmpty();
  }
}
