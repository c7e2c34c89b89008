package broodtide.terminal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TerminalTest {
  private static final Table PLANS =
      Table.of(
              Table.Column.words("plan"),
              Table.Column.numbers("mites per 100"),
              Table.Column.numbers("spring bees"),
              Table.Column.sentences("in words"))
          .row(
              "wait",
              "8.4",
              "4,900",
              "Over the threshold in about 3 in 4 simulated colonies, from late August on.")
          .strongRow(
              "thymol",
              "0.95",
              "12,000",
              "Over the threshold in about 1 in 10 simulated colonies.");

  @ParameterizedTest
  @ValueSource(ints = {40, 60, 80, 100})
  void noLineIsWiderThanTheTerminalAndNoWordIsLost(int width) {
    String set = new Terminal(width, false, true).table(PLANS);
    assertThat(set.lines()).allMatch(l -> l.length() <= width);
    String words = set.replaceAll("\\s+", " ");
    assertThat(words).contains("wait", "8.4", "12,000", "thymol");
    for (String word : PLANS.rows().get(0).cells().get(3).split(" ", -1)) {
      assertThat(words).contains(word);
    }
  }

  @Test
  void numbersStandRightUnderTheirHead() {
    List<String> lines = new Terminal(100, false, true).table(PLANS).lines().toList();
    int end = lines.get(0).indexOf("mites per 100") + "mites per 100".length();
    for (Table.Row row : PLANS.rows()) {
      String name = row.cells().get(0);
      String line = lines.stream().filter(l -> l.startsWith(name)).findFirst().orElseThrow();
      assertThat(line.substring(0, end)).endsWith(" " + row.cells().get(1));
    }
  }

  @Test
  void colourOnlyAtATerminalThatWantsIt() {
    var utf8 = StandardCharsets.UTF_8;
    assertThat(Terminal.of(Map.of(), true, utf8).colour()).isTrue();
    assertThat(Terminal.of(Map.of(), false, utf8).colour()).isFalse();
    assertThat(Terminal.of(Map.of("NO_COLOR", "1"), true, utf8).colour()).isFalse();
    // An empty NO_COLOR does not count (no-color.org, from memory).
    assertThat(Terminal.of(Map.of("NO_COLOR", ""), true, utf8).colour()).isTrue();
    assertThat(Terminal.of(Map.of("TERM", "dumb"), true, utf8).colour()).isFalse();
    assertThat(Terminal.of(Map.of(), false, utf8).table(PLANS)).doesNotContain("\u001b");
    assertThat(Terminal.of(Map.of(), true, utf8).table(PLANS)).contains("\u001b[1mthymol");
  }

  @Test
  void widthAndLettersFollowTheTerminal() {
    var ascii = StandardCharsets.US_ASCII;
    assertThat(Terminal.of(Map.of("COLUMNS", "72"), true, ascii).width()).isEqualTo(72);
    assertThat(Terminal.of(Map.of("COLUMNS", "240"), true, ascii).width()).isEqualTo(100);
    assertThat(Terminal.of(Map.of("COLUMNS", "wide"), true, ascii).width()).isEqualTo(80);
    assertThat(Terminal.of(Map.of(), true, ascii).unicode()).isFalse();
    assertThat(Terminal.of(Map.of(), true, StandardCharsets.UTF_8).unicode()).isTrue();
  }

  @Test
  void sentencesAreBrokenAtBlanks() {
    Terminal t = new Terminal(40, false, true);
    String text =
        "If you wait, the colony is over the threshold of 3 per 100 by 28 August.\n\nAnd so on.";
    assertThat(t.wrap(text, 2).lines())
        .containsExactly(
            "If you wait, the colony is over the",
            "  threshold of 3 per 100 by 28 August.",
            "",
            "And so on.");
    assertThat(t.wrap("x".repeat(90)).lines()).allMatch(l -> l.length() <= 40).hasSize(3);
  }

  @Test
  void namesFromFilesCannotCommandTheTerminal() {
    Table table = Table.of(Table.Column.words("colony")).row("hive\u001b[2J\t7");
    assertThat(new Terminal(80, false, true).table(table))
        .doesNotContain("\u001b")
        .contains("hive [2J 7");
  }

  @Test
  void drawingsInCellsKeepTheirBlanks() {
    Table table = Table.of(Table.Column.words("plan"), Table.Column.words("range"));
    table = table.row("wait", "   --|-").row("treat", "-|-");
    assertThat(new Terminal(80, false, true).table(table).lines())
        .containsExactly("plan   range", "wait      --|-", "treat  -|-");
  }

  @Test
  void aTableTooWideForTheTerminalBecomesAList() {
    Table wide = Table.of(Table.Column.words("plan"), Table.Column.numbers("mites per 100 bees"));
    String set =
        new Terminal(40, false, true).table(wide.row("wait for another month", "1.5 (0.6 to 3)"));
    assertThat(set.lines())
        .containsExactly("wait for another month", "  mites per 100 bees: 1.5 (0.6 to 3)");
    assertThat(set.lines()).allMatch(l -> l.length() <= 40);
  }

  @Test
  void rowsNeedACellForEachColumn() {
    assertThatThrownBy(() -> Table.of(Table.Column.words("a")).row("1", "2"))
        .hasMessageContaining("needs 1 cells");
  }
}
