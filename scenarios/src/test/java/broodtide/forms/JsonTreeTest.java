package broodtide.forms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.study.StudyFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonTreeTest {
  private static Node read(String text) {
    Faults faults = new Faults("f.json");
    Node root = JsonTree.read(text, faults);
    faults.throwIfAny();
    return Objects.requireNonNull(root);
  }

  @Test
  void valuesKnowTheirPlace() {
    Node.Obj root = (Node.Obj) read("// remark\n{\n  \"a b\": [1, {\"c\": true}] /* x */\n}");
    assertThat(root.spot()).isEqualTo(new Node.Spot("$", 2, 1));
    assertThat(root.keys()).containsEntry("a b", new Node.Spot("$['a b']", 3, 3));
    Node.Arr list = (Node.Arr) Objects.requireNonNull(root.members().get("a b"));
    assertThat(list.spot()).isEqualTo(new Node.Spot("$['a b']", 3, 10));
    Node.Obj inner = (Node.Obj) list.items().get(1);
    assertThat(inner.members())
        .containsEntry("c", new Node.Word(new Node.Spot("$['a b'][1].c", 3, 20), "true"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`` | is empty",
        "// only a remark | is empty",
        "{\"a\": 1,} | line 1, column 9, $: the comma before this } is one too many",
        "{\"a\": [1,]} | line 1, column 10, $.a: the comma before this ] is one too many",
        "{\"a\": 1 \"b\": 2} | a comma is missing before \"",
        "{\"a\" 1} | a colon : is missing",
        "{a: 1} | a field's name must stand in double quotes, not begin with a",
        "{'a': 1} | use double quotes",
        "{\"a\": 'x'} | use double quotes",
        "{\"a\": NaN} | \"NaN\" is no JSON value; write a plain number",
        "{\"a\": -Infinity} | is no JSON value",
        "{\"a\": yes} | \"yes\" is no JSON value",
        "{\"a\": 01} | no zero in front",
        "{\"a\": +1} | no + sign",
        "{\"a\": .5} | digit on both sides of the point",
        "{\"a\": 5.} | digit on both sides of the point",
        "{\"a\": 0,5} | a field's name in double quotes must follow the comma, not 5",
        "{\"a\": \"C:\\bees\\m\"} | a backslash in text is written twice",
        "{\"a\": \"b | the file ends too early: the bracket opened on line 1 is not closed",
        "{\"a\": [1 | the file ends too early",
        "{\"a\": 1}} | a bracket here closes nothing",
        "{\"a\": [1} | the bracket opened on line 1 must be closed first",
        "{\"a\": 1} {\"b\": 2} | nothing may follow the last }",
        "{\"a\": 1} x | \"x\" is no JSON value",
        "} | a bracket here closes nothing",
        "{\"a\": ]} | this ] closes nothing, or a value is missing",
        "<html> | a value cannot begin with <",
      })
  void syntaxFaultsAreSaidInWords(String text, String said) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("f.json")
        .hasMessageContaining(said);
  }

  @Test
  void textMayNotRunOverTheLine() {
    assertThatThrownBy(() -> read("{\n\"a\": \"b\nc\"}"))
        .hasMessageContaining("line 2")
        .hasMessageContaining("close the double quote on its own line");
  }

  @Test
  void nestingNumbersAndTextsAreBounded() {
    int deep = JsonTree.DEEPEST;
    assertThat(read("[".repeat(deep) + "]".repeat(deep))).isNotNull();
    assertThatThrownBy(() -> read("[".repeat(deep + 1) + "]".repeat(deep + 1)))
        .hasMessageContaining("nested more than 32 deep");
    assertThatThrownBy(() -> read("[".repeat(1_000_000))).isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> read("[1" + "0".repeat(5000) + "]"))
        .hasMessageContaining("longer than any needs to be");
  }

  @Test
  void fileMustBeUtf8AndNotTooLarge(@TempDir Path dir) throws Exception {
    Path file = dir.resolve("a.json");
    Files.write(file, "{\"title\": \"B\u00e4r\"}".getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> StudyFile.read(file)).hasMessageContaining("save it as UTF-8");
    Files.write(file, new byte[Source.LARGEST + 1]);
    assertThatThrownBy(() -> StudyFile.read(file)).hasMessageContaining("larger than 5 MB");
    Files.writeString(file, "\uFEFF\uFEFF[]");
    assertThatThrownBy(() -> StudyFile.read(file)).hasMessageContaining("expected an object");
    assertThatThrownBy(() -> StudyFile.read(dir.resolve("b.json")))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("b.json: cannot be read");
    assertThatThrownBy(() -> StudyFile.read(dir)).isInstanceOf(BadInput.class);
  }
}
