package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names that a reader would take for one another. */
class LookalikeNamesTest {
  private static List<String> notes(String... names) {
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (int i = 0; i < names.length; i++) {
      lines.put(names[i], i + 2);
    }
    return LookalikeNames.within(LookalikeNames.lines(lines, ""));
  }

  @ParameterizedTest
  @CsvSource({
    "Hive 1, Hive1, white space",
    "Hive 1, 'Hive  1', white space",
    "Hive 1, Hive\u00a01, 'white space, first in U+0020 (SPACE) against U+00A0 (NO-BREAK SPACE)'",
    "Hive 1, hive 1, upper and lower case",
    "STRASSE, Straße, upper and lower case",
    "Ruch\u00e9, Ruche\u0301, 'the Unicode form of a character, first in U+00E9'",
    "Hive 1, Hive \uff11, the Unicode form of a character",
    "Hive 2, Hive \u00b2, the Unicode form of a character",
    "Alder, \u0410lder, 'characters that look alike, first in U+0041 (LATIN CAPITAL LETTER A)"
        + " against U+0410 (CYRILLIC CAPITAL LETTER A)'",
    "Top, \u03a4\u03bfp, characters that look alike",
    "Hop, \u041d\u03bfp, characters that look alike",
    "oak, \u0585ak, characters that look alike",
    "Hive 1, Hive l, characters that look alike",
    "Hive 1, Hive I, characters that look alike",
    "Hive 10, Hive 1O, characters that look alike",
    "Hive 3, Hive \u0663, characters that look alike",
    "O'Hara, O\u2019Hara, characters that look alike",
    "A-1, A\u20131, characters that look alike",
    "ALDER, \u0430lder, characters that look alike"
  })
  void areToldWithBothSpellingsAndLines(String one, String other, String how) {
    assertThat(notes(one, "Somewhere else", other))
        .singleElement()
        .asString()
        .startsWith("Taken as different colonies, though the names differ only in " + how)
        .contains(": \"" + one + "\" (line 2), \"" + other + "\" (line 4).");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Hive 1|Hive 2|Hive 11",
        "A|B|I|L|O|Q",
        "Ruche|Ruch\u00e9",
        "Hive 1|1 Hive",
        "I|L",
        "n|r"
      })
  void differentNamesAreLeftAlone(String names) {
    assertThat(notes(names.split("[|]", -1))).isEmpty();
  }

  @Test
  void threeSpellingsMakeOneNote() {
    assertThat(notes("Hive 1", "HIVE 1", "Hive1"))
        .singleElement()
        .asString()
        .contains("only in upper and lower case; or in white space: \"Hive 1\" (line 2)")
        .contains("\"HIVE 1\" (line 3)", "\"Hive1\" (line 4)");
  }

  @Test
  void manyAreCounted() {
    String[] names = new String[100];
    for (int i = 0; i < 50; i++) {
      names[2 * i] = "hive " + (100 + i);
      names[2 * i + 1] = "Hive " + (100 + i);
    }
    assertThat(notes(names)).hasSize(6).last().isEqualTo("45 more groups of names look alike.");
  }

  @Test
  void oneListAgainstAnother() {
    Map<String, String> washes = Map.of("Hive 1", "line 2 of w.csv", "hive 1", "line 3 of w.csv");
    assertThat(LookalikeNames.between(Map.of("Hive1", "the study"), washes))
        .singleElement()
        .asString()
        .contains("\"Hive1\" (the study)", "\"Hive 1\" (line 2 of w.csv)");
    assertThat(LookalikeNames.between(Map.of("Hive 1", "the study"), washes)).isEmpty();
    assertThat(LookalikeNames.between(Map.of("Other", "the study"), washes)).isEmpty();
  }
}
