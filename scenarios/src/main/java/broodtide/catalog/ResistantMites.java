package broodtide.catalog;

import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.forms.Nearest;
import broodtide.measure.OutOfRange;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Active substances that did badly at a place, and what is then believed of their miticides. */
public final class ResistantMites {
  private ResistantMites() {}

  /** {@return active substances of the library that mites are known to resist, in order} */
  public static List<String> substances() {
    return miticides().stream().map(t -> t.substance().orElseThrow()).distinct().sorted().toList();
  }

  /**
   * {@return priors in which the miticides with some active substances act as in apiaries with
   * resistant mites; all others keep theirs}
   *
   * @param field how the user named them, for messages
   * @param substances active substances
   * @param usual what is believed otherwise
   * @throws OutOfRange when mites are not known to resist one
   */
  public static Priors believed(String field, Collection<String> substances, Priors usual) {
    List<String> known = substances();
    for (String substance : substances) {
      if (!known.contains(substance)) {
        throw new OutOfRange(
            field,
            "\"" + substance + "\"",
            "one of " + String.join(", ", known) + Nearest.hint(substance, known));
      }
    }
    Map<String, Prior> beliefs = new TreeMap<>(usual.efficacies());
    for (ControlTemplate template : miticides()) {
      if (substances.contains(template.substance().orElseThrow())) {
        resistance(template).ifPresent(r -> beliefs.put(template.name(), r.belief()));
      }
    }
    return usual.withEfficacies(beliefs);
  }

  private static List<ControlTemplate> miticides() {
    return Catalog.CONTROLS.names().stream()
        .map(Catalog::control)
        .filter(t -> t.substance().isPresent() && resistance(t).isPresent())
        .toList();
  }

  private static Optional<Resistance> resistance(ControlTemplate template) {
    return template.efficacy().flatMap(ControlTemplate.Efficacy::resistant);
  }
}
