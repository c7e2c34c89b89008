package broodtide.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Each system has a command of its own that opens an address. */
class BrowserTest {
  @Test
  void eachSystemIsAskedInItsOwnWay() {
    assertThat(Browser.of("Windows 11").command())
        .containsExactly("rundll32", "url.dll,FileProtocolHandler");
    assertThat(Browser.of("Mac OS X").command()).containsExactly("open");
    assertThat(Browser.of("Linux").command()).containsExactly("xdg-open");
  }
}
