package broodtide.classroom;

import broodtide.catalog.Catalog;
import broodtide.web.Html;
import broodtide.web.PageFrame;
import broodtide.web.Template;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The explorer: one picture of where the mites are, flags on its days, and sentences below it. The
 * page is a form that works without a script; with one the flags can be dragged.
 */
final class ExplorerPage {
  private ExplorerPage() {}

  /** The page for a state. */
  static Html of(Places places, ExplorerState state, List<Explorer.Colony> colonies) {
    Html main =
        Template.named("explorer.html")
            .fill(
                Map.ofEntries(
                    Map.entry("climates", climates(places, state)),
                    Map.entry("north", option("no", "North of the equator", !state.south())),
                    Map.entry("south", option("yes", "South of the equator", state.south())),
                    Map.entry("mites", dial(ExplorerState.MITES, state.mites())),
                    Map.entry("brood", dial(ExplorerState.BROOD, state.brood())),
                    Map.entry("arrivals", dial(ExplorerState.ARRIVALS, state.arrivals())),
                    Map.entry("kept", kept(state)),
                    Map.entry("controls", controls()),
                    Map.entry("letters", letters(state)),
                    Map.entry("first", Html.text(ExplorerState.first(state.south()).toString())),
                    Map.entry("last", Html.text(ExplorerState.last(state.south()).toString())),
                    Map.entry(
                        "usual", Html.text(ExplorerState.usual("", state.south()).toString())),
                    Map.entry("picture", Html.text("/api/inside?" + state.query())),
                    Map.entry("scenarios", scenarios(state, colonies))));
    return PageFrame.page(
        "Try a colony",
        "/explore",
        List.of("chart.css", "explorer.css"),
        List.of("explorer.js"),
        main);
  }

  private static Html climates(Places places, ExplorerState state) {
    return Html.each(
        places.names(),
        name ->
            option(
                name,
                ControlMark.shortly(places.climate(name).title()),
                name.equals(state.climate())));
  }

  private static Html controls() {
    return Html.each(
        Catalog.CONTROLS.names(), name -> option(name, Catalog.control(name).title(), false));
  }

  /** The scenarios that an action can go to: those that are there and the next. */
  private static Html letters(ExplorerState state) {
    int many = Math.min(ExplorerState.LETTERS.size(), state.scenarios().size() + 1);
    return Html.each(
        ExplorerState.LETTERS.subList(0, many),
        letter -> option(letter, "Season " + letter.toUpperCase(Locale.ROOT), false));
  }

  private static Html kept(ExplorerState state) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < state.scenarios().size(); i++) {
      out.append("<input type=\"hidden\" name=\"")
          .append(ExplorerState.LETTERS.get(i))
          .append("\" value=\"")
          .append(Html.text(state.text(i)))
          .append("\">");
    }
    return new Html(out.toString());
  }

  private static Html scenarios(ExplorerState state, List<Explorer.Colony> colonies) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < colonies.size(); i++) {
      Sentences sentences = new Sentences(colonies.get(i));
      out.append("<section class=\"scenario\"><h2>Season ")
          .append(colonies.get(i).letter())
          .append("</h2><ul>");
      List<String> actions = sentences.actions();
      if (actions.isEmpty()) {
        out.append("<li>No action.</li>");
      }
      for (int k = 0; k < actions.size(); k++) {
        out.append("<li>")
            .append(Html.text(actions.get(k)))
            .append(" <a href=\"/explore?")
            .append(Html.text(state.without(i, k).query()))
            .append("\">Remove<span class=\"unseen\"> ")
            .append(Html.text(actions.get(k)))
            .append("</span></a></li>");
      }
      out.append("</ul>");
      for (String line : List.of(sentences.wash(), sentences.winter(), sentences.end())) {
        out.append("<p>").append(Html.text(line)).append("</p>");
      }
      out.append("<ul class=\"notes\">")
          .append(Html.list(sentences.notes()))
          .append("</ul></section>");
    }
    return new Html(out.toString());
  }

  private static Html option(String value, String label, boolean chosen) {
    return new Html(
        "<option value=\""
            + Html.text(value)
            + "\""
            + (chosen ? " selected" : "")
            + ">"
            + Html.text(label)
            + "</option>");
  }

  private static Html dial(Dial dial, double value) {
    return Template.named("slider.html")
        .fill(
            Map.of(
                "name", Html.text(dial.name()),
                "label", Html.text(dial.label()),
                "unit", Html.text(dial.unit()),
                "min", Html.text(plain(dial.min())),
                "max", Html.text(plain(dial.max())),
                "step", Html.text(plain(dial.step())),
                "value", Html.text(plain(value))));
  }

  private static String plain(double value) {
    return SeasonJson.number(value).toPlainString();
  }
}
