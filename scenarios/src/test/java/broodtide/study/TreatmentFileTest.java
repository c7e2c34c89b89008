package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TreatmentFileTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 12, 31);

  private static TreatmentFile read(String text) {
    try {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      return TreatmentFile.read(new ByteArrayInputStream(bytes), "given.csv", TODAY);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static List<String> faults(String text) {
    try {
      read(text);
    } catch (BadInput e) {
      return e.faults().stream().map(Fault::text).toList();
    }
    return List.of();
  }

  @Test
  void treatmentsGoToTheirColonies() {
    TreatmentFile file =
        read(
            """
            date,colony,control
            2025-08-20,A,Thymol
            2025-05-02,B,split
            2025-03-15,*,oxalic vapour
            2025-03-01,,drone-comb
            """);
    assertThat(file.of("A"))
        .extracting(c -> c.from().toString())
        .containsExactly("2025-03-01", "2025-03-15", "2025-08-20");
    assertThat(file.of("B"))
        .extracting(c -> c.from().toString())
        .containsExactly("2025-03-01", "2025-03-15", "2025-05-02");
    Control thymol = Catalog.control("thymol").at(LocalDate.of(2025, 8, 20));
    assertThat(file.of("A").get(2)).isEqualTo(thymol);
    assertThat(file.notes()).isEmpty();
  }

  @Test
  void rhythmAndBroodGapsCanBeGiven() {
    TreatmentFile file =
        read(
            """
            note;every;applications;control;colony;date;days without laying;weather
            warm;7;3;oxalic-vapour;A;01.08.2025;;sun
            ;;;split;A;02.05.2025;31;
            ;;;requeening;A;20.06.2025;5;
            """);
    List<Control> given = file.of("A");
    assertThat(((Split) given.get(0)).daysWithoutLaying()).isEqualTo(31);
    assertThat(((Requeening) given.get(1)).daysWithoutLaying()).isEqualTo(5);
    assertThat(((MiticideCourse) given.get(2)).applications()).isEqualTo(3);
    assertThat(((MiticideCourse) given.get(2)).every()).isEqualTo(7);
    assertThat(file.given().get(0).note()).isEqualTo("warm");
    assertThat(file.notes()).anyMatch(n -> n.contains("\"weather\" of the treatments"));
  }

  @Test
  void allFaultsAtOnce() {
    assertThat(
            faults(
                """
                date,colony,control,applications,every,days_without_laying
                2026-01-05,A,thymol,,,
                2025-06-31,A,thymol,,,
                2025-06-01,A,thymo,,,
                2025-06-01,A,,,,
                2025-06-02,A,thymol,,,12
                2025-06-03,A,split,2,,
                2025-06-04,A,drone-comb,,,10
                2025-06-05,A,oxalic-vapour,3,1,
                2025-06-06,A,split,,,99
                2025-06-07,A,oxalic-vapour,x,,
                2025-07-01,A,split,,,
                2025-07-09,,queen-caging,,,
                2025-07-20,B,thymol,,,
                2025-07-20,B,thymol,,,
                """))
        .satisfiesExactly(
            f -> assertThat(f).startsWith("given.csv, line 2").contains("after today"),
            f -> assertThat(f).startsWith("given.csv, line 3").contains("no such day"),
            f -> assertThat(f).startsWith("given.csv, line 4").contains("did you mean \"thymol\"?"),
            f -> assertThat(f).startsWith("given.csv, line 5").contains("blank; name one of"),
            f -> assertThat(f).startsWith("given.csv, line 6").contains("leave the cell blank"),
            f -> assertThat(f).startsWith("given.csv, line 7").contains("only miticides"),
            f -> assertThat(f).startsWith("given.csv, line 8").contains("only splits"),
            f -> assertThat(f).startsWith("given.csv, line 9").contains("every").contains("to 120"),
            f -> assertThat(f).startsWith("given.csv, line 10").contains("0 to 60 (days)"),
            f -> assertThat(f).startsWith("given.csv, line 11").contains("whole number"),
            f -> assertThat(f).startsWith("given.csv, line 13").contains("overlap"),
            f -> assertThat(f).startsWith("given.csv, line 15").contains("same as line 14"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'date,colony\n2025-06-01,A\n' | missing control; the first line must name",
        "'date,colony,control,control\n' | there twice",
        "'date,colony,control\n' | no treatments; add a row such as",
        "'' | header date,colony,control"
      })
  void headers(String text, String message) {
    assertThat(faults(text)).singleElement().asString().contains(message);
  }

  @Test
  void strangersAreNoted() {
    TreatmentFile file =
        read("date,colony,control\n2025-08-20,Hive1,thymol\n2025-08-20,Hive 2,thymol\n");
    assertThat(file.unused(Set.of("Hive 1", "Hive 2")))
        .containsExactly(
            "Treatments of colony \"Hive1\" in given.csv are not used, for it has no washes; did"
                + " you mean \"Hive 1\"?");
  }

  @Test
  void manyStrangersAndColumnsAreCounted() {
    StringBuilder text = new StringBuilder("date,colony,control");
    for (int i = 0; i < 5000; i++) {
      text.append(",c").append(i);
    }
    for (int i = 100; i < 500; i++) {
      text.append("\n2025-08-20,Q").append(i).append(",thymol");
    }
    TreatmentFile file = read(text.toString());
    assertThat(file.notes())
        .containsExactly(
            "Columns \"c0\", \"c1\", \"c2\" and 4997 more of the treatments are not used.");
    assertThat(file.unused(Set.of("Hive 1")))
        .hasSize(6)
        .last()
        .isEqualTo("Nor are those of 395 more colonies in given.csv, which have no washes.");
  }

  @Test
  void namesThatLookAlikeAreNoted() {
    String rows = "2025-08-20,Hive 1,thymol\n2025-08-20,hive 1,thymol\n";
    assertThat(read("date,colony,control\n" + rows).notes())
        .singleElement()
        .asString()
        .contains("\"Hive 1\" (line 2 of the treatments)", "\"hive 1\" (line 3 of the treatments)");
  }
}
