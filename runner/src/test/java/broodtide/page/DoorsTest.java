package broodtide.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first page, and what stood at its address before. */
class DoorsTest {
  @TempDir private Path folder;

  @Test
  void theFirstPageHasDoorsAndASavedAddressOfTheExplorerStillOpensIt() throws Exception {
    try (OpenHives page = new OpenHives(folder)) {
      assertThat(body(page, "/")).contains("What would you like to do?", "href=\"/lessons\"");
      assertThat(body(page, "/?mites=2&a=thymol@2026-08-05"))
          .contains("5 August: Thymol")
          .isEqualTo(body(page, "/explore?mites=2&a=thymol@2026-08-05"));
      assertThat(page.troubles()).isEmpty();
    }
  }

  private static String body(OpenHives page, String path) throws Exception {
    return page.send(HttpRequest.newBuilder(page.address().resolve(path)).build()).body();
  }
}
