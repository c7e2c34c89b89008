package broodtide.browser;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** axe-core in a page: the rules of accessibility that a program can check. */
public final class Axe {
  private Axe() {}

  /**
   * What axe finds on the page that is open, loaded into it where it is not there yet.
   *
   * @return one line for each broken rule, with the first places of it; empty when there is none
   */
  public static JsonNode violations(Chromium browser) throws Exception {
    if (!browser.eval("Boolean(window.axe)").asBoolean()) {
      browser.eval(script() + "; undefined");
    }
    return browser.eval(
        "axe.run(document, {resultTypes: ['violations']}).then(r => r.violations.map(v => v.id +"
            + " ': ' + v.nodes.map(n => n.target.join(' ') + ' ' + n.failureSummary).slice(0,"
            + " 3).join(' | ')))");
  }

  private static String script() throws IOException {
    try (InputStream in = Axe.class.getResourceAsStream("/axe/axe.min.js")) {
      return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
