package broodtide.web;

import java.util.List;
import java.util.Map;

/** What stands around every page: heading, ways to the other pages, cautions. */
public final class PageFrame {
  private PageFrame() {}

  /**
   * A whole page.
   *
   * @param title title of the page
   * @param here address of the page among the ways, empty for none
   * @param styles style sheets beside the usual ones
   * @param scripts scripts
   * @param main what stands between heading and foot
   */
  public static Html page(
      String title, String here, List<String> styles, List<String> scripts, Html main) {
    return Template.named("frame.html")
        .fill(
            Map.of(
                "title",
                Html.text(title),
                "styles",
                Html.each(
                    styles, s -> new Html("<link rel=\"stylesheet\" href=\"/static/" + s + "\">")),
                "scripts",
                Html.each(
                    scripts,
                    s -> new Html("<script type=\"module\" src=\"/static/" + s + "\"></script>")),
                "explore",
                way("/explore", "Explore", here),
                "lessons",
                way("/lessons", "Lessons", here),
                "main",
                main));
  }

  /** A page that says why a request was turned away. */
  public static Html refusal(int status, String message) {
    Html main =
        new Html(
            "<h1>This does not work</h1><p class=\"lead\">"
                + Html.text(message)
                + "</p><p><a href=\"/\">Back to the first page</a></p>");
    return page("Not possible (" + status + ")", "", List.of(), List.of(), main);
  }

  private static Html way(String address, String name, String here) {
    String current = address.equals(here) ? " aria-current=\"page\"" : "";
    return new Html("<a href=\"" + address + "\"" + current + ">" + name + "</a>");
  }
}
