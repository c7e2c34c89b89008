package broodtide.forms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.study.Studies;
import broodtide.study.StudyFile;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Characters that cannot be seen: refused in names, marked in notes, blank in messages. */
class HiddenCharactersTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 12, 31);

  private static WashFile washes(String colony, String note) throws IOException {
    String text =
        "date,colony,mites,bees,note\n2025-06-15,\"" + colony + "\",7,300,\"" + note + "\"\n";
    return WashFile.read(new StringReader(text), "washes.csv", TODAY);
  }

  /** Controls, ends of lines, turns of direction, what has no width, blank letters. */
  @ParameterizedTest
  @ValueSource(
      ints = {
        0x01, 0x09, 0x0A, 0x1B, 0x7F, 0x85, 0x9B, 0xAD, 0x34F, 0x61C, 0x1160, 0x180E, 0x200B,
        0x200D, 0x200E, 0x2028, 0x2029, 0x202E, 0x2060, 0x2066, 0x2800, 0x3164, 0xFEFF, 0xE0041
      })
  void namesMayNotHoldThem(int character) {
    String name = "North" + Character.toString(character) + "1";
    String said = String.format("the hidden character U+%04X", character);
    assertThatThrownBy(() -> washes(name, ""))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("washes.csv, line 2, column 2, colony: \"North 1\"")
        .hasMessageContaining(said)
        .hasMessageContaining("type the name again");
    String given = "date,colony,control\n2025-08-20,\"" + name + "\",thymol\n";
    assertThatThrownBy(
            () ->
                TreatmentFile.read(
                    new ByteArrayInputStream(given.getBytes(StandardCharsets.UTF_8)),
                    "given.csv",
                    TODAY))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("given.csv, line 2, column 2, colony: \"North 1\"")
        .hasMessageContaining(said);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\\u0000", "\\u001b", "\\u202e", "\\u2028", "\\u0085", "\\ud800"})
  void namesInStudiesMayNotHoldThem(String escape) {
    String study = Studies.SHELF.find("larkmeadow").text();
    String spoilt = study.replaceFirst("Larkmeadow 2\"", "Larkmeadow\\" + escape + "2\"");
    assertThat(spoilt).isNotEqualTo(study);
    assertThatThrownBy(() -> StudyFile.read(Source.of("s.json", spoilt)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("$.colony.name: \"Larkmeadow 2\" is not valid")
        .hasMessageContaining("hidden character U+" + escape.substring(2).toUpperCase());
  }

  @Test
  void namesOfAllScriptsStand() throws IOException {
    for (String name :
        new String[] {"Bienère 3", "\u4e2d\u6587", "\u05d0\u05d1", "\ud83d\udc1d", "a\u0301"}) {
      assertThat(washes(name, "").washes().get(0).colony()).isEqualTo(name);
    }
  }

  @Test
  void notesHaveThemMarked() throws IOException {
    String family = "\ud83d\udc68\u200d\ud83d\udc69";
    assertThat(washes("A", "two\nlines,\ta tab, " + family).washes().get(0).note())
        .isEqualTo("two\nlines,\ta tab, " + family);
    assertThat(washes("A", "a\u202eb\u001b[31mc\u2028d").washes().get(0).note())
        .isEqualTo("a\ufffdb\ufffd[31mc\ufffdd");
  }

  /** The name of a field is shown as its path, and is written by whoever wrote the file. */
  @Test
  void messagesShowBlanks() {
    assertThat(Fault.quoted("a\u001b[2Jb\u202ec\u2028d")).isEqualTo("\"a [2Jb c d\"");
    assertThatThrownBy(() -> StudyFile.read(Source.of("s.json", "{\"ti\u202etle\": 1}")))
        .isInstanceOf(BadInput.class)
        .hasMessageNotContaining("\u202e")
        .hasMessageContaining("ti tle");
  }
}
