package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.table.Sheet;
import broodtide.table.SheetText;
import broodtide.wash.BoardCount;
import broodtide.wash.Frame;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WashFileTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 12, 31);
  private static final String HEAD = "date,colony,mites,bees\n";
  private static final LocalDate DAY = LocalDate.of(2025, 6, 15);

  private static WashFile read(String text) {
    try {
      return WashFile.read(new StringReader(text), "washes.csv", TODAY);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static WashFile bytes(byte[] bytes) {
    try {
      return WashFile.read(new ByteArrayInputStream(bytes), "washes.csv", TODAY);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static List<Fault> faults(String text) {
    try {
      read(text);
    } catch (BadInput e) {
      return e.faults();
    }
    return List.of();
  }

  @Test
  void plainFile() {
    WashFile file = read(HEAD + "2025-06-15,A,7,300\n2025-07-15,A,12,\n2025-06-15,B,0,310\n");
    assertThat(file.washes())
        .containsExactly(
            Wash.of(DAY, "A", 7, 300),
            Wash.ofHalfCup(LocalDate.of(2025, 7, 15), "A", 12),
            Wash.of(DAY, "B", 0, 310));
    assertThat(file.byColony()).containsOnlyKeys("A", "B");
    assertThat(file.notes())
        .contains(
            "Bees were not counted in 1 of 3 washes; half a cup of 320 bees, give or take 45, is"
                + " assumed there.");
  }

  @Test
  void everyColumnInAnyOrderAndCase() {
    WashFile file =
        read(
            "Frames of bees,NOTE,Frame,method,Bees,Mites,Colony,weather,Date\n"
                + "\"7,5\",\"windy, cold\n"
                + "and \"\"wet\"\"\",brood centre,Powdered Sugar,300,7,A,rain,2025-06-15\n");
    Wash wash = file.washes().get(0);
    assertThat(wash.framesOfBees()).hasValue(7.5);
    assertThat(wash.note()).isEqualTo("windy, cold\nand \"wet\"");
    assertThat(wash.frame()).isEqualTo(Frame.BROOD_CENTRE);
    assertThat(wash.method()).isEqualTo(WashMethod.POWDERED_SUGAR);
    assertThat(file.notes()).containsExactly("Column \"weather\" is not used.");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\uFEFFdate,colony,mites,bees\r\n2025-06-15,A,7,300\r\n",
        "date;colony;mites;bees\n2025-06-15;A;7,0;300,0\n",
        "sep=;\ndate;colony;mites;bees\n2025-06-15;A;7;300\n",
        "date\tcolony\tmites\tbees\n2025-06-15\tA\t7\t300",
        "# remark with a \" in it\n\n"
            + "\"date\",\"colony\",\"mites\",\"bees\"\n"
            + "\"2025-06-15\",\"A\",\"7\",\"300\"\n",
        "date,colony,mites,bees,,\n2025-06-15,A,7,300,,\n,,,,,\n\n",
        "date,colony,mites,bees\r2025-06-15,A,7,300\r",
        "date,colony,mites,bees\n 2025-06-15 ,\u00A0A , 7 ,300.0\n",
        "date,colony,mites,bees\n45823,A,7,300\n",
        "date,colony,mites,bees\n20250615,A,7,300\n",
        "date,colony,mites,bees\n2025/6/15,A,7,300\n",
        "date,colony,mites,bees\n15.06.2025,A,7,300\n",
        "date,colony,mites,bees\n15/6/2025,A,7,300\n",
        "date,colony,mites,bees\n6/15/2025,A,7,300\n",
        "date,colony,mites,bees\n6-15-2025,A,7,300\n",
        "date,colony,mites,bees\n2025-06-15T00:00:00,A,7,300\n",
        "date,colony,mites,bees\n15/06/2025 10:30,A,7,300\n",
      })
  void spreadsheetHabits(String text) {
    assertThat(read(text).washes()).containsExactly(Wash.of(DAY, "A", 7, 300));
  }

  @Test
  void encodings() {
    String text = HEAD + "2025-06-15,Ruché,7,300\n";
    for (Charset charset : List.of(StandardCharsets.UTF_8, Charset.forName("windows-1252"))) {
      assertThat(bytes(text.getBytes(charset)).washes().get(0).colony()).isEqualTo("Ruché");
    }
    byte[] wide = ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE);
    assertThat(bytes(wide).washes().get(0).colony()).isEqualTo("Ruché");
    assertThat(bytes(text.getBytes(Charset.forName("windows-1252"))).notes().get(0))
        .contains("not UTF-8");
    assertThatThrownBy(() -> bytes(new byte[] {'P', 'K', 3, 4, 0}))
        .hasMessage("washes.csv: is a spreadsheet workbook, not text; save the sheet as CSV first");
    assertThatThrownBy(() -> bytes(new byte[] {'a', 0, 1})).hasMessageContaining("not a text file");
  }

  /** A spreadsheet's own function: 46000 formatted as a date is 2025-12-09 (1900 date system). */
  @Test
  void dayNumbersAreASpreadsheets() {
    WashFile file = read(HEAD + "46000,A,7,300\n");
    assertThat(file.washes().get(0).date()).isEqualTo("2025-12-09");
    assertThat(file.notes().get(0)).contains("46000 is 2025-12-09");
  }

  @Test
  void oneClearRowMakesTheColumnClear() {
    WashFile dayFirst = read(HEAD + "03/04/2025,A,1,300\n25/04/2025,A,2,300\n");
    assertThat(dayFirst.washes().get(0).date()).isEqualTo("2025-04-03");
    assertThat(dayFirst.notes())
        .contains("Dates such as 03/04/2025 are read as day/month/year, as line 3 shows.");
    WashFile monthFirst = read(HEAD + "03/04/2025,A,1,300\n04/25/2025,A,2,300\n");
    assertThat(monthFirst.washes().get(0).date()).isEqualTo("2025-03-04");
    assertThat(read(HEAD + "05/05/2025,A,1,300\n").washes().get(0).date()).isEqualTo("2025-05-05");
  }

  @Test
  void unclearDatesShowBothReadings() {
    String rows = "03/04/2025,A,1,300\n04/05/2025,A,2,300\n";
    assertThatThrownBy(() -> read(HEAD + rows))
        .isInstanceOf(BadInput.class)
        .hasMessage(
            "washes.csv, line 2, column 1, date: \"03/04/2025\" is not valid; it may be"
                + " 2025-04-03 or 2025-03-04, and no row of the file shows which (1 more rows"
                + " alike); write dates as 2025-06-15");
    assertThat(faults(HEAD + "25/04/2025,A,1,300\n04/25/2025,A,2,300\n").get(0).message())
        .contains("in the opposite order to \"25/04/2025\" in line 2");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2025-02-30",
        "31/02/2025",
        "15/06/25",
        "June 15",
        "2025-06",
        "1/2/3/2025",
        "12",
        "99999",
        "2025-06/15",
        "/06/2025",
        "2026-01-01",
        "0205-06-15",
        "--",
        "2025-06-15x",
        "20251315",
        "1234567890"
      })
  void impossibleDates(String date) {
    List<Fault> faults = faults(HEAD + "2025-06-14,A,1,300\n" + date + ",A,7,300\n");
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).line()).isEqualTo(3);
    assertThat(faults.get(0).column()).isEqualTo(1);
    assertThat(faults.get(0).field()).isEqualTo("date");
    assertThat(faults.get(0).value()).isEqualTo(date);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2025-06-15,A,301,300|mites|0 to 300, the bees in the wash; look whether",
        "2025-06-15,A,-1,300|mites|never negative",
        "2025-06-15,A,seven,300|mites|whole number from 0",
        "2025-06-15,A,7.5,300|mites|whole number from 0",
        "2025-06-15,A,,300|mites|write 0 when none were found",
        "2025-06-15,A,7,0|bees|1 to 10000",
        "2025-06-15,A,7,about 300|bees|leave the cell blank",
        "2025-06-15,A,7,1.200|bees|decimal or thousands",
        "2025-06-15,A,7,20000|bees|1 to 10000",
        "2025-06-15,,7,300|colony|give the colony a name",
        ",A,7,300|date|write the day",
        "2025-06-15,A,7,300,shaken|method|choose one of alcohol, ",
        "2025-06-15,A,7,300,,lid|frame|choose one of brood-centre, ",
        "2025-06-15,A,7,300,,,n,many|frames_of_bees|such as 7.5",
        "2025-06-15,A,7,300,,,n,101|frames_of_bees|0 to 100",
        "2025-06-15,A,7,300,,,n,7,5||put text that holds the separator in quotation marks",
      })
  void oneFaultPerBadCell(String spec) {
    String[] part = spec.split("\\|");
    List<Fault> faults =
        faults("date,colony,mites,bees,method,frame,note,frames_of_bees\n" + part[0] + "\n");
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).field()).isEqualTo(part[1]);
    assertThat(faults.get(0).message()).contains(part[2]);
    assertThat(faults.get(0).line()).isEqualTo(2);
  }

  @Test
  void allFaultsAtOnceAndNoMoreThanTwentyShown() {
    StringBuilder text = new StringBuilder(HEAD);
    for (int i = 0; i < 25; i++) {
      text.append("2025-06-15,A,x,y\n");
    }
    assertThatThrownBy(() -> read(text.toString()))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith(
            "washes.csv has 50 faults:\n  washes.csv, line 2, column 3, mites: ")
        .hasMessageEndingWith("\n  ... and 30 more");
    assertThat(faults(text.toString())).hasSize(20);
  }

  @Test
  void aWashOfFewBeesIsPointedOut() {
    assertThat(read(HEAD + "2025-06-15,A,7,31\n2025-07-15,A,7,300\n2025-08-15,A,7,\n").notes())
        .contains("Few bees for a wash: 31 on line 2; look whether a digit is missing.");
    assertThat(read(HEAD + "2025-06-15,A,7,100\n").notes()).noneMatch(n -> n.contains("Few"));
  }

  @Test
  void repeatedRowsAreRefusedAndSecondWashesKept() {
    assertThatThrownBy(() -> read(HEAD + "2025-06-15,A,7,300\n\n2025-06-15,A,7,300\n"))
        .hasMessageContaining("line 4: the row is the same as line 2");
    WashFile twice = read(HEAD + "2025-06-15,A,7,300\n2025-06-15,A,9,300\n2025-06-15,a,9,300\n");
    assertThat(twice.washes()).hasSize(3);
    assertThat(twice.notes())
        .contains(
            "Some colonies were washed more than once on a day; all counts are used.",
            "Taken as different colonies, though the names differ only in upper and lower case:"
                + " \"A\" (line 2), \"a\" (line 4). If they are one colony, write its name the"
                + " same way everywhere.");
  }

  /** What nothing else tells apart is still kept apart, and said. */
  @Test
  void namesThatLookAlikeStayApart() {
    WashFile file = read(HEAD + "2025-06-15,Hive 1,7,300\n2025-07-15,Hive\u00a01,9,300\n");
    assertThat(file.byColony()).containsOnlyKeys("Hive 1", "Hive\u00a01");
    assertThat(file.colonies()).containsEntry("Hive 1", 2).containsEntry("Hive\u00a01", 3);
    assertThat(file.notes()).anyMatch(n -> n.contains("line 2") && n.contains("line 3"));
  }

  @Test
  void thousandsOfColumnsAreSaidOnce() {
    StringBuilder text = new StringBuilder("date,colony,mites,bees,method,frame");
    for (int i = 0; i < 5000; i++) {
      text.append(",c").append(i);
    }
    assertThat(read(text + "\n2025-06-15,A,7,300\n").notes())
        .containsExactly("Columns \"c0\", \"c1\", \"c2\" and 4997 more are not used.");
  }

  @Test
  void manySmallWashesAreCounted() {
    StringBuilder text = new StringBuilder(HEAD);
    for (int i = 1; i <= 28; i++) {
      text.append(String.format("2025-06-%02d,A,1,%d\n", i, 30 + i));
    }
    assertThat(read(text.toString()).notes())
        .contains(
            "Few bees for a wash: 31 on line 2, 32 on line 3, 33 on line 4, 34 on line 5, 35 on"
                + " line 6 and 23 more; look whether a digit is missing.");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2025-06-15 25:99:99",
        "2025-06-15T24:00",
        "2025-06-15 10:60",
        "15.06.2025 10:30:60",
        "2025-06-15 1:2:3:4",
        "2025-06-15 10:30.",
        "2025-06-15 10::"
      })
  void timesThatNoClockShows(String date) {
    assertThat(faults(HEAD + date + ",A,7,300\n"))
        .singleElement()
        .satisfies(f -> assertThat(f.value()).isEqualTo(date))
        .satisfies(
            f -> assertThat(f.message()).contains("is not a time of day; write the date alone"));
  }

  @Test
  void marksOfByteOrderMayBeSeveral() {
    assertThat(read("\uFEFF\uFEFF" + HEAD + "2025-06-15,A,7,300\n").washes()).hasSize(1);
    String text = "\uFEFF\uFEFF\uFEFF" + HEAD + "2025-06-15,A,7,300\n";
    for (Charset charset : List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16LE)) {
      assertThat(bytes(text.getBytes(charset)).washes()).hasSize(1);
    }
  }

  @Test
  void nulIsToldWithItsLine() {
    assertThatThrownBy(() -> read(HEAD + "2025-06-15,A\0,7,300\n"))
        .hasMessage(
            "washes.csv, line 2: holds the character NUL and is not a text file; save the table as"
                + " CSV");
  }

  @Test
  void headers() {
    assertThatThrownBy(() -> read("")).hasMessageContaining("is empty; the first line must be");
    assertThatThrownBy(() -> read("\n# only remarks\n")).hasMessageContaining("is empty");
    assertThatThrownBy(() -> read(HEAD)).hasMessageContaining("a header and no washes");
    assertThatThrownBy(() -> read("date,hive,mites\n2025-06-15,A,7\n"))
        .hasMessage(
            "washes.csv, line 1, header: \"date, hive, mites\" is not valid; missing colony,"
                + " bees; the first line must name the columns date,colony,mites,bees");
    assertThatThrownBy(() -> read("date,colony,mites,bees,mites\n"))
        .hasMessageContaining("column 5, mites");
    assertThatThrownBy(() -> read("2025-06-15,A,7,300\n")).hasMessageContaining("missing date,");
  }

  @Test
  void openQuotationMarks() {
    assertThatThrownBy(() -> read("# x\n" + HEAD + "2025-06-15,\"A,7,300\n"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("opened and not closed");
    assertThatThrownBy(() -> read(HEAD + "2025-06-15,\"A\"x,7,300\n")).isInstanceOf(BadInput.class);
  }

  @Test
  void linesAreCountedThroughRemarksAndCellsOfSeveralLines() {
    String text =
        "# remark\nsep=,\ndate,colony,mites,bees,note\n2025-06-15,A,7,300,\"two\nlines\"\n"
            + "\n2025-06-16,A,x,300,\n";
    assertThat(faults(text).get(0).line()).isEqualTo(7);
  }

  @Test
  void aColonyStandsInOneYard() {
    String head = "date,colony,mites,bees,yard\n";
    WashFile file =
        read(
            head
                + "2025-06-15,A,7,300,Ridge\n2025-07-15,A,8,300,\n2025-06-15,B,7,300,\n"
                + "2025-07-15,B,9,300,Mill\n2025-06-15,C,1,300,\n");
    assertThat(file.yards()).containsExactly(Map.entry("A", "Ridge"), Map.entry("B", "Mill"));
    assertThat(read(HEAD + "2025-06-15,A,7,300\n").yards()).isEmpty();
    String moved = head + "2025-06-15,A,7,300,Ridge\n2025-07-15,A,8,300,Mill\n";
    Fault fault = faults(moved).get(0);
    assertThat(fault.line()).isEqualTo(3);
    assertThat(fault.toString())
        .contains("Mill")
        .contains("stands in \"Ridge\" on line 2")
        .contains("one yard for each colony");
  }

  private static final String BOARDS = "date,colony,mites,bees,method,board_days\n";

  @Test
  void boardsStandBesideWashes() {
    WashFile file =
        read(
            BOARDS
                + "2025-06-15,A,7,300,,\n2025-07-15,A,24,,board,3\n"
                + "2025-07-20,A,30,,Board,5\n");
    assertThat(file.washes()).hasSize(1);
    assertThat(file.byColony().get("A")).hasSize(1);
    LocalDate out = LocalDate.of(2025, 7, 15);
    assertThat(file.boards())
        .containsExactly(
            new BoardCount(out.minusDays(3), out, "A", 24),
            new BoardCount(out, out.plusDays(5), "A", 30));
    assertThat(file.boards().get(0).perDay()).isEqualTo(8);
    assertThat(file.notes()).anyMatch(n -> n.contains("board were counted 2 times"));
  }

  @Test
  void aColonyMayHaveBoardsAlone() {
    WashFile file = read(BOARDS + "2025-07-15,B,24,,board,3\n");
    assertThat(file.washes()).isEmpty();
    assertThat(file.byColony()).isEmpty();
    assertThat(file.countsByColony()).containsOnlyKeys("B");
    assertThat(file.notes()).anyMatch(n -> n.startsWith("Boards alone are known of B"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2025-07-15,A,24,,board,|board_days|for how many days",
        "2025-07-15,A,24,,board,29|board_days|1 to 28",
        "2025-07-15,A,24,,board,0|board_days|1 to 28",
        "2025-07-15,A,24,300,board,3|bees|holds no bees",
        "2025-07-15,A,24,300,alcohol,3|board_days|beside a wash",
        "2025-07-15,A,50001,,board,3|mites|50",
        "2025-06-20,A,4,,board,8||one board at a time"
      })
  void faultyBoards(String spec) {
    String[] part = spec.split("\\|");
    String text = BOARDS + "2025-06-15,A,7,300,,\n2025-06-15,A,9,,board,3\n" + part[0] + "\n";
    List<Fault> found = faults(text);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).line()).isEqualTo(4);
    assertThat(found.get(0).toString()).contains(part[1]).contains(part[2]);
  }

  @Test
  void aHundredThousandRows() {
    StringBuilder text = new StringBuilder(HEAD);
    LocalDate day = LocalDate.of(2000, 1, 1);
    for (int i = 0; i < 100_000; i++) {
      text.append(day.plusDays(i % 9000)).append(",hive ").append(i / 9000).append(',');
      text.append(i % 30).append(',').append(250 + i % 97).append('\n');
    }
    WashFile file = read(text.toString());
    assertThat(file.washes()).hasSize(100_000);
  }

  @Test
  void tooMuchIsRefused() {
    StringBuilder rows = new StringBuilder(HEAD);
    rows.append("x\n".repeat(Sheet.MOST_ROWS + 1));
    assertThatThrownBy(() -> read(rows.toString())).hasMessageContaining("more than 1000000 rows");
    assertThatThrownBy(() -> bytes(new byte[SheetText.LARGEST + 1]))
        .hasMessageContaining("larger than 50 MB");
  }

  @Test
  void aWideOrOddFileEndsInAMessage() {
    List<String> odd = new ArrayList<>();
    odd.add(HEAD + ",".repeat(100_000) + "x\n");
    odd.add(HEAD + "2025-06-15," + "A".repeat(200_000) + ",7,x\n");
    odd.add("date;colony,mites\tbees\n1;2,3\t4\n");
    odd.add(HEAD + "2025-06-15,A\u0007\u001b[31m,x,300\n");
    for (String text : odd) {
      assertThatThrownBy(() -> read(text))
          .isInstanceOf(BadInput.class)
          .message()
          .hasSizeLessThan(3000)
          .doesNotContain("\u001b");
    }
  }
}
