package broodtide.page;

import broodtide.web.Html;
import broodtide.web.Template;
import java.util.Map;

/** The pages around the user's hives; what stands in them comes later, and only with the token. */
final class HivesPages {
  private HivesPages() {}

  /** The first page, with three doors. */
  static Html doors() {
    return framed("Broodtide", "doors.html", "doors.js");
  }

  /** The page for one's own hives. */
  static Html hives() {
    return framed("Your hives - Broodtide", "hives.html", "hives.js");
  }

  private static Html framed(String title, String main, String script) {
    return Template.named("hives-frame.html")
        .fill(
            Map.of(
                "title", Html.text(title),
                "script", Html.text(script),
                "main", Template.named(main).fill(Map.of())));
  }
}
