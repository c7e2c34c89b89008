package broodtide.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables as RFC 4180 writes them, safe to open in a spreadsheet. */
class CsvTest {
  /** RFC 4180, section 2: CR LF after every line, quotes around commas, breaks and quotes. */
  @Test
  @Tag("outside")
  void writesWhatTheStandardAsksFor() {
    String text = new Csv(List.of("a", "b")).row(List.of("x,y", "say \"hi\"")).finish();
    assertThat(text).isEqualTo("a,b\r\n\"x,y\",\"say \"\"hi\"\"\"\r\n");
  }

  @Test
  @Tag("outside")
  void anIndependentReaderGetsBackWhatWasWritten() throws IOException {
    List<List<String>> rows =
        List.of(
            List.of("plain", "", " blanks "),
            List.of("comma, and \"quote\"", "line\nbreak", "cr\rlf\r\n"),
            List.of("\u00e9\u4e2d\ud83d\udc1d", "'", ";\t"));
    Csv csv = new Csv(List.of("one", "two", "three"));
    rows.forEach(csv::row);
    List<List<String>> read =
        new CsvMapper()
            .readerForListOf(String.class)
            .with(CsvParser.Feature.WRAP_AS_ARRAY)
            .<List<String>>readValues(csv.finish())
            .readAll();
    assertThat(read.subList(1, read.size())).isEqualTo(rows);
  }

  /** The openings that spreadsheets take for a formula: OWASP, "CSV Injection". */
  @ParameterizedTest
  @Tag("outside")
  @ValueSource(
      strings = {
        "=HYPERLINK(\"http://x.example\")",
        "+1",
        "-2",
        "@SUM(A1)",
        "\tx",
        "\rx",
        "\nx",
        "  =1",
        "\uff1d1"
      })
  void formulasAreDisarmed(String name) {
    assertThat(Csv.text(name)).isEqualTo("'" + name);
  }

  /** A spreadsheet that cuts cells elsewhere than at commas finds no formula behind its cut. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "x;=1+1~x;'=1+1",
        "x\t=1~x\t'=1",
        "x; \t -2~x; \t '-2",
        "x;\"=1\"~x;\"'=1\"",
        "x\r\n@SUM(A1)~x\r\n'@SUM(A1)",
        "a,+1;+2|+3~a,'+1;'+2|'+3",
        "=1;=2~'=1;'=2",
        "a;b - c\td~a;b - c\td",
        "x;\uff1d1~x;'\uff1d1"
      })
  void formulasBehindOtherSeparatorsAreDisarmed(String pair) {
    String name = pair.split("~", -1)[0];
    String written = pair.split("~", -1)[1];
    assertThat(Csv.text(name)).isEqualTo(written);
    String line = new Csv(List.of("a", "b")).row(List.of("1", Csv.text(name))).finish();
    for (String cut : line.split("[;\t\r\n|,]", -1)) {
      assertThat(cut.replaceAll("^[\\s\"]+", "")).doesNotMatch("[=+\\-@\uff1d].*");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"Alder", "", "a=b", "3 - left", "'quoted'", " Alder"})
  void otherNamesStayAsTheyAre(String name) {
    assertThat(Csv.text(name)).isEqualTo(name);
  }

  @Test
  void numbersHaveTwoDigitsAndNoExponent() {
    assertThat(Csv.number(300)).isEqualTo("300");
    assertThat(Csv.number(1.0 / 3)).isEqualTo("0.33");
    assertThat(Csv.number(1234567)).isEqualTo("1200000");
    assertThat(Csv.number(0.000234)).isEqualTo("0.00023");
    assertThat(Csv.number(7e-5)).as("less than a colony can hold").isEqualTo("0");
    assertThat(Csv.number(Double.NaN)).isEmpty();
  }

  @Test
  void rowsThatDoNotFitAreRefused() {
    Csv csv = new Csv(List.of("a", "b"));
    assertThatThrownBy(() -> csv.row(List.of("1"))).hasMessageContaining("1 cells");
  }
}
