package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.study.RowSieve.Table;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class RowSieveTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 1);

  private final List<String> sound = new ArrayList<>();
  private final List<String[]> cells = new ArrayList<>();
  private final List<Fault> faulty = new ArrayList<>();

  private void sift(Table table, String csv, String... further) throws IOException {
    RowSieve.sift(
        table,
        new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)),
        "t.csv",
        List.of(further),
        TODAY,
        new RowSieve.Taker() {
          @Override
          public void sound(int line, String[] row) {
            sound.add(line + " " + String.join(",", row));
            cells.add(row);
          }

          @Override
          public void faulty(int line, List<Fault> faults) {
            faulty.addAll(faults);
          }
        });
  }

  @Test
  void badRowsAreSetAsideAndTheOthersGoOn() throws IOException {
    sift(
        Table.WASHES,
        """
        region;colony;date;mites;bees
        North;A;25/6/2026;3;300
        North;A;26/7/2026;many;300
        ;B;3/7/2026;400;300
        South;B;3/8/2026;4;
        """,
        "region");
    assertThat(sound)
        .containsExactly("2 2026-06-25,A,3,300,,,,,,,North", "5 2026-08-03,B,4,,,,,,,,South");
    assertThat(faulty).extracting(Fault::line).containsExactly(3, 4);
    assertThat(faulty).extracting(Fault::field).containsExactly("mites", "mites");
    assertThat(faulty).extracting(Fault::value).containsExactly("many", "400");
    assertThat(faulty.get(1).message()).contains("0 to 300");
  }

  @Test
  void rowsSayWhatIsWrongAsTheWholeFileWould() throws IOException {
    String csv = "date,colony,mites,bees\n2026-07-01,A,-3,300\n2027-07-01,A,3,300\n";
    sift(Table.WASHES, csv);
    assertThat(sound).isEmpty();
    assertThatThrownBy(
            () ->
                WashFile.read(
                    new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)), "t.csv", TODAY))
        .isInstanceOfSatisfying(
            BadInput.class, e -> assertThat(e.faults()).containsExactlyElementsOf(faulty));
  }

  @Test
  void daysThatCanBeReadInTwoWaysAreSetAside() throws IOException {
    sift(
        Table.WASHES,
        "date,colony,mites,bees\n3/4/2026,A,3,300\n2026-07-01,A,3,300\n5/5/2026,A,3,300\n");
    assertThat(sound).hasSize(2);
    assertThat(faulty).extracting(Fault::value).containsExactly("3/4/2026");
    faulty.clear();
    sift(
        Table.WASHES,
        "date,colony,mites,bees\n13/4/2026,A,3,300\n4/13/2026,A,3,300\n3/4/2026,A,3,300\n");
    assertThat(faulty).extracting(Fault::value).containsExactly("3/4/2026");
  }

  @Test
  void rowsOfOneColonyAreJudgedTogether() throws IOException {
    sift(
        Table.WASHES,
        """
        date,colony,mites,bees,yard,method,board_days
        2026-05-01,A,3,300,Mill,,
        2026-05-01,A,3,300,Mill,,
        2026-06-01,A,4,300,Ford,,
        2026-07-01,A,30,,,board,7
        2026-07-03,A,30,,,board,7
        """,
        "climate",
        "region");
    assertThat(faulty).isEmpty();
    RowSieve.Judged<WashFile> judged = RowSieve.washes(cells, i -> "row " + i, TODAY);
    assertThat(judged.faults()).extracting(Fault::line).containsExactly(2, 3, 5);
    assertThat(judged.faults().get(0).message()).contains("the same as row 1");
    assertThat(judged.faults().get(1).message()).contains("\"Mill\" on row 1");
    WashFile whole = Objects.requireNonNull(judged.table());
    assertThat(whole.washes()).hasSize(1);
    assertThat(whole.boards()).hasSize(1);
  }

  @Test
  void boardsAloneAreATable() throws IOException {
    sift(Table.WASHES, "date,colony,mites,bees,method,board_days\n2026-07-01,A,30,,board,7\n");
    RowSieve.Judged<WashFile> judged = RowSieve.washes(cells, i -> "row " + i, TODAY);
    assertThat(judged.faults()).isEmpty();
    WashFile boards = Objects.requireNonNull(judged.table());
    assertThat(boards.washes()).isEmpty();
    assertThat(boards.boards()).hasSize(1);
  }

  @Test
  void treatmentsAreSiftedLikewise() throws IOException {
    sift(
        Table.TREATMENTS,
        """
        date,colony,control
        2026-06-01,A,thymol
        2026-06-02,A,prayer
        2026-06-01,A,thymol
        """);
    assertThat(faulty).extracting(Fault::field).containsExactly("control");
    RowSieve.Judged<TreatmentFile> judged = RowSieve.treatments(cells, i -> "row " + i, TODAY);
    assertThat(judged.faults()).extracting(Fault::line).containsExactly(2);
    assertThat(Objects.requireNonNull(judged.table()).of("A")).hasSize(1);
  }

  @Test
  void aFileThatIsNoTableIsRefusedWhole() {
    assertThatThrownBy(() -> sift(Table.WASHES, "colony,mites\nA,3\n"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("missing date, bees");
  }
}
