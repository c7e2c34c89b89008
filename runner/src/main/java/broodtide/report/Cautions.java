package broodtide.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a beekeeper should mind before acting; common practice, no source. */
final class Cautions {
  private static final List<String> LINES =
      List.of(
          "These are estimates, not instructions. The registered label and local law"
              + " decide whether a product may be used, when, how much and how often. Where they"
              + " differ from this page, follow them. If in doubt, ask the bee inspector or a"
              + " veterinarian.",
          "Organic acids burn skin, eyes and lungs: wear acid-proof gloves and goggles. With"
              + " vapour, spray or fumes wear a respirator for acid vapour as the label says. Stand"
              + " upwind and have water at hand. Rinse splashes for 15 minutes and see a doctor.",
          "Alcohol is flammable, its flame is hard to see, and its fumes are harmful. Work"
              + " outdoors. Keep it, and the washed bees, well away from a lit smoker.",
          "A wash kills the bees in it. Find the queen before you take them.",
          "Bees sting. Know what to do about an allergic reaction before you open a hive, and do"
              + " not work alone if you have had one.",
          "Keep treatments out of honey for harvest: supers off unless the label allows them on,"
              + " and withdrawal periods kept. Residues gather in wax.",
          "Alternate active substances from one treatment to the next. Wash afterwards: only a"
              + " count shows resistance.",
          "Varroa is notifiable in some places, and in a few it is not established. Report it where"
              + " the law asks for it.");

  private Cautions() {}

  /** What every miticide's cautions begin with; the first of {@link #LINES} says it for all. */
  private static final String LABEL = "The registered label and local law decide";

  /** What holds whatever is done. */
  static void write(HtmlWriter h) {
    write(h, List.of());
  }

  static void write(HtmlWriter h, List<PagePart> parts) {
    h.open("section", "class", "cautions").element("h2", "Cautions").open("ul");
    LINES.forEach(line -> h.element("li", line));
    h.close();
    Map<String, List<String>> controls = controls(parts);
    if (!controls.isEmpty()) {
      h.element("h3", "Controls in these plans").open("ul");
      controls.forEach(
          (name, lines) -> {
            h.open("li").open("strong").given(name).close();
            h.text(": ").given(String.join(" ", lines)).close();
          });
      h.close();
    }
    h.close();
  }

  /** The controls of all plans with what is to be said of each beside what holds for all. */
  private static Map<String, List<String>> controls(List<PagePart> parts) {
    Map<String, List<String>> out = new LinkedHashMap<>();
    for (PagePart part : parts) {
      part.cautions()
          .forEach(
              (name, lines) -> {
                List<String> own = lines.stream().filter(l -> !l.startsWith(LABEL)).toList();
                if (!own.isEmpty()) {
                  out.putIfAbsent(name, own);
                }
              });
    }
    return out;
  }
}
