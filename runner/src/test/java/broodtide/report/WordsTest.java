package broodtide.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.words.Digits;
import broodtide.words.Odds;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers and chances in words. */
class WordsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.01234 | 0.012",
        "0.5 | 0.50",
        "0.995 | 0.99",
        "0.9951 | 1.0",
        "4 | 4.0",
        "9.96 | 10",
        "37.4 | 37",
        "99.6 | 100",
        "123 | 120",
        "24312 | 24,000",
        "-3.14 | -3.1",
        "0 | 0",
        "NaN | unknown"
      })
  void twoDigits(double value, String words) {
    assertThat(Digits.two(value)).isEqualTo(words);
  }

  @Test
  void twoDigitsAreNeverFurtherOffThanHalfTheSecond() {
    for (double v = 0.001; v < 1e6; v *= 1.013) {
      double read = Double.parseDouble(Digits.two(v).replace(",", ""));
      assertThat(Math.abs(read - v) / v).as("%s", v).isLessThanOrEqualTo(0.0501);
    }
  }

  @Test
  void rangesPlainNumbersAndShares() {
    assertThat(Digits.withRange(2.31, 1.18, 4.04)).isEqualTo("2.3 (1.2 to 4.0)");
    assertThat(Digits.range(1.01, 1.04)).isEqualTo("1.0");
    assertThat(Digits.plain(0.5)).isEqualTo("0.5");
    assertThat(Digits.plain(3)).isEqualTo("3");
    assertThat(Digits.plain(0.1 + 0.2)).isEqualTo("0.3");
    assertThat(Digits.plain(20000)).isEqualTo("20,000");
    assertThat(Digits.count(24810)).isEqualTo("24,810");
    assertThat(Digits.percent(0.374)).isEqualTo("37 %");
    assertThat(Digits.percent(0.004)).isEqualTo("under 1 %");
    assertThat(Digits.percent(0.996)).isEqualTo("over 99 %");
    assertThat(Digits.percent(0)).isEqualTo("0 %");
    assertThat(Digits.percent(1)).isEqualTo("100 %");
    assertThat(Digits.chance(1)).isEqualTo("over 99 %");
    assertThat(Digits.chance(0)).isEqualTo("under 1 %");
    assertThat(Digits.chance(0.37)).isEqualTo("37 %");
  }

  @Test
  void theSameInEveryCountry() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Digits.two(24312)).isEqualTo("24,000");
      assertThat(Digits.plain(0.25)).isEqualTo("0.25");
    } finally {
      Locale.setDefault(before);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 | almost never",
        "0.01 | about 1 in 100",
        "0.25 | about 1 in 4",
        "0.5 | about even",
        "0.78 | about 4 in 5",
        "0.9 | about 9 in 10",
        "0.98 | almost certainly",
        "1 | almost certainly"
      })
  void chances(double chance, String words) {
    assertThat(Odds.words(chance)).isEqualTo(words);
  }

  @Test
  void chancesInWordsNeverMisleadByMuch() {
    for (int i = 5; i <= 970; i++) {
      double chance = i / 1000.0;
      List<String> words = List.of(Odds.words(chance).split(" ", -1));
      double said =
          words.contains("even")
              ? 0.5
              : Double.parseDouble(words.get(1)) / Double.parseDouble(words.get(3));
      assertThat(Math.abs(said - chance)).as("%s is '%s'", chance, words).isLessThan(0.055);
      double ratio = (said / (1 - said)) / (chance / (1 - chance));
      assertThat(Math.abs(Math.log(ratio))).as("%s is '%s'", chance, words).isLessThan(0.75);
    }
  }

  @Test
  void chancesOfSeasons() {
    assertThat(Odds.seasons(0.26)).isEqualTo("in about 1 in 4 simulated colonies");
    assertThat(Odds.seasons(0.5)).isEqualTo("in about half of the simulated colonies");
    assertThat(Odds.seasons(0)).isEqualTo("in almost none of the simulated colonies");
    assertThat(Odds.seasons(1)).isEqualTo("in nearly all simulated colonies");
    assertThatThrownBy(() -> Odds.words(1.2)).hasMessageContaining("1.2");
    assertThatThrownBy(() -> Odds.words(Double.NaN)).hasMessageContaining("NaN");
  }
}
