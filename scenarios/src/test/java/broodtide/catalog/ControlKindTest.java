package broodtide.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Control;
import broodtide.control.ControlEffects;
import broodtide.forms.Source;
import java.lang.reflect.Proxy;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each control is declared once: no class without a kind, no kind that is passed over. */
class ControlKindTest {
  private static final LocalDate DAY = LocalDate.of(2026, 6, 10);

  static List<ControlTemplate> shipped() {
    return Catalog.CONTROLS.names().stream().map(Catalog::control).toList();
  }

  @Test
  void everyControlHasOneKind() {
    assertThat(ControlKind.ALL.stream().<Class<?>>map(ControlKind::type).toList())
        .containsExactlyInAnyOrder(Control.class.getPermittedSubclasses());
    assertThat(ControlKind.ALL.stream().map(ControlKind::word)).doesNotHaveDuplicates();
  }

  @Test
  void everyKindIsShipped() {
    assertThat(shipped().stream().map(t -> ControlKind.of(t.usual()).word()).distinct())
        .containsExactlyInAnyOrderElementsOf(
            ControlKind.ALL.stream().map(ControlKind::word).toList());
  }

  @ParameterizedTest
  @MethodSource("shipped")
  void aShippedControlDoesSomethingFromItsFirstDay(ControlTemplate template) {
    Control control = template.at(DAY);
    assertThat(control.from()).isEqualTo(DAY);
    assertThat(control.name()).isEqualTo(template.title());
    assertThat(deeds(control)).isNotEmpty();
  }

  @ParameterizedTest
  @MethodSource("shipped")
  void movedAndNamedItIsOtherwiseTheSame(ControlTemplate template) {
    Control control = template.at(DAY);
    assertThat(control.startingOn(DAY.plusDays(17)).named("other"))
        .isNotEqualTo(control)
        .isEqualTo(template.at(DAY.plusDays(17)).named("other"));
    assertThat(control.startingOn(DAY.plusDays(17)).startingOn(DAY)).isEqualTo(control);
    assertThat(control.startingOn(DAY.plusDays(17)).to()).isEqualTo(control.to().plusDays(17));
  }

  @ParameterizedTest
  @MethodSource("shipped")
  void aControlOfTheLibraryIsWrittenAndReadBack(ControlTemplate template) {
    assertThat(
            ControlTemplateFile.read(
                Source.of("control.json", ControlTemplateFile.write(template))))
        .isEqualTo(template);
  }

  /** What a control asks of whoever plays the colony. */
  private static Set<String> deeds(Control control) {
    Set<String> deeds = new LinkedHashSet<>();
    control.act(
        (ControlEffects)
            Proxy.newProxyInstance(
                ControlKindTest.class.getClassLoader(),
                new Class<?>[] {ControlEffects.class},
                (proxy, method, arguments) -> {
                  deeds.add(method.getName() + Arrays.toString(arguments));
                  return null;
                }));
    return deeds;
  }
}
