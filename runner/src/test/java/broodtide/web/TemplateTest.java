package broodtide.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

class TemplateTest {
  @Test
  void textIsEscapedWhateverItHolds() {
    Template template = new Template("t", "<p title=\"{{a}}\">{{a}}</p>");
    assertThat(template.fill(Map.of("a", Html.text("<b onx='1'>&\"$1\\{{a}}"))).markup())
        .isEqualTo(
            "<p title=\"&lt;b onx=&#39;1&#39;&gt;&amp;&quot;$1\\{{a}}\">"
                + "&lt;b onx=&#39;1&#39;&gt;&amp;&quot;$1\\{{a}}</p>");
  }

  @Test
  void gapsAndPiecesMatch() {
    Template template = new Template("t", "{{a}}");
    assertThatThrownBy(() -> template.fill(Map.of())).hasMessageContaining("{{a}}");
    assertThatThrownBy(() -> template.fill(Map.of("a", Html.NONE, "b", Html.NONE)))
        .hasMessageContaining("[b]");
  }
}
