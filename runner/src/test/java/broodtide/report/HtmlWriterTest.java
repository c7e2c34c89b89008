package broodtide.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Text stays text, whatever it holds. */
class HtmlWriterTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "<script>alert(1)</script> | &lt;script&gt;alert(1)&lt;/script&gt;",
        "\" onload=\"x | &quot; onload=&quot;x",
        "&amp; | &amp;amp;",
        "it's | it's"
      })
  void escapesText(String text, String written) {
    assertThat(HtmlWriter.piece().element("p", text).finish())
        .isEqualTo("<p>" + written + "</p>\n");
  }

  @Test
  void escapesAttributes() {
    assertThat(HtmlWriter.piece().element("p", "", "title", "\"><img onerror=\"x\">").finish())
        .isEqualTo("<p title=\"&quot;&gt;&lt;img onerror=&quot;x&quot;&gt;\"></p>\n");
  }

  @Test
  void signsThatTurnTheTextOrAreForbiddenBecomeMarks() {
    String text = HtmlWriter.piece().text("a\u202eb\u2066c\u0000d\u0085e\ud800f").finish();
    assertThat(text).isEqualTo("a\ufffdb\ufffdc\ufffdd\ufffde\ufffdf");
  }

  @Test
  void closesWhatIsOpen() {
    assertThat(HtmlWriter.document("en").open("body").open("p").text("x").finish())
        .isEqualTo("<!DOCTYPE html>\n<html lang=\"en\"><body><p>x</p>\n</body>\n</html>\n");
  }

  @Test
  void aStyleThatEndsItselfIsRefused() {
    assertThatThrownBy(() -> HtmlWriter.piece().style("p{}</style><script>"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
