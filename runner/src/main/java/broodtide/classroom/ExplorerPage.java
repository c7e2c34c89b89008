package broodtide.classroom;

import broodtide.catalog.ControlTemplate;
import broodtide.web.Html;
import broodtide.web.PageFrame;
import broodtide.web.Template;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** The explorer: dials at the side, charts beside them. */
final class ExplorerPage {
  private ExplorerPage() {}

  /** The page. */
  static Html of(Places places, Explorer explorer) {
    Html main =
        Template.named("explorer.html")
            .fill(
                Map.of(
                    "climates", climates(places),
                    "mites", dial(Explorer.MITES),
                    "brood", dial(Explorer.BROOD),
                    "combon",
                        date(
                            "combon",
                            "Drone comb goes in",
                            Explorer.COMB_FROM,
                            Explorer.COMB_TO,
                            Explorer.COMB_USUAL),
                    "treatments", treatments(explorer),
                    "treaton",
                        date(
                            "treaton",
                            "Treatment begins",
                            Explorer.FIRST_DAY,
                            Explorer.TREAT_TO,
                            Explorer.TREAT_USUAL),
                    "arrivals", dial(Explorer.ARRIVALS),
                    "day",
                        date(
                            "day",
                            "Read the day",
                            Explorer.FIRST_DAY,
                            Explorer.LAST_DAY,
                            LocalDate.of(2026, 8, 15))));
    return PageFrame.page(
        "Explore a colony",
        "/",
        List.of("chart.css", "explorer.css"),
        List.of("explorer.js"),
        main);
  }

  private static Html climates(Places places) {
    return Html.each(
        places.names(),
        name ->
            option(
                name,
                ControlMark.shortly(places.climate(name).title()),
                name.equals(places.first())));
  }

  private static Html treatments(Explorer explorer) {
    return new Html(
        option(Explorer.NONE, "None", true).markup()
            + group("Miticides", explorer.treatments().stream().filter(ExplorerPage::miticide))
            + group("Brood and queen", explorer.treatments().stream().filter(t -> !miticide(t))));
  }

  private static boolean miticide(ControlTemplate template) {
    return template.usual().course().isPresent();
  }

  private static Html group(String label, Stream<ControlTemplate> templates) {
    List<ControlTemplate> all = templates.toList();
    return new Html(
        "<optgroup label=\""
            + Html.text(label)
            + "\">"
            + Html.each(all, t -> option(t.name(), t.title(), false))
            + "</optgroup>");
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

  private static Html dial(Dial dial) {
    return slider(
        dial.name(),
        dial.label(),
        plain(dial.min()),
        plain(dial.max()),
        plain(dial.step()),
        plain(dial.start()),
        "");
  }

  /** A slider over days: its number counts days from the first. */
  private static Html date(
      String name, String label, LocalDate first, LocalDate last, LocalDate usual) {
    return slider(
        name,
        label,
        "0",
        Long.toString(last.toEpochDay() - first.toEpochDay()),
        "1",
        Long.toString(usual.toEpochDay() - first.toEpochDay()),
        " data-first=\"" + first + "\"");
  }

  private static Html slider(
      String name, String label, String min, String max, String step, String value, String more) {
    return Template.named("slider.html")
        .fill(
            Map.of(
                "name", Html.text(name),
                "label", Html.text(label),
                "min", Html.text(min),
                "max", Html.text(max),
                "step", Html.text(step),
                "value", Html.text(value),
                "more", new Html(more)));
  }

  private static String plain(double value) {
    return value == Math.rint(value)
        ? Long.toString((long) value)
        : String.format(Locale.ROOT, "%s", value);
  }
}
