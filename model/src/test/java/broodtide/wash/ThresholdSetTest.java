package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.Tag;
import java.util.List;
import org.junit.jupiter.api.Test;

class ThresholdSetTest {
  private static final Threshold FLOW =
      new Threshold(
          Stage.HONEY_FLOW,
          6,
          9.0,
          List.of(new Band(0, "little"), new Band(6, "much"), new Band(12, "too much")),
          null);

  private static ThresholdSet set(List<Threshold> thresholds) {
    return new ThresholdSet(
        "invented",
        "Invented",
        "nowhere",
        "none",
        Tag.CHOICE,
        300,
        thresholds,
        List.of(new Band(15, "ill")));
  }

  @Test
  void countsAreReadInTheSetsOwnUnit() {
    ThresholdSet set = set(List.of(FLOW));
    assertThat(set.perHundred(Stage.HONEY_FLOW).orElseThrow()).isCloseTo(2, within(1e-12));
    assertThat(set.perHundred(Stage.BROODLESS)).isEmpty();
    assertThat(set.words(Stage.HONEY_FLOW, 1.99)).contains("little");
    assertThat(set.words(Stage.HONEY_FLOW, 2)).contains("much");
    assertThat(set.words(Stage.HONEY_FLOW, 40)).contains("too much");
    assertThat(set.words(Stage.BROODLESS, 40)).isEmpty();
    assertThat(set.sign(4.9)).isEmpty();
    assertThat(set.sign(5)).contains("ill");
  }

  @Test
  void contradictionsAreRefused() {
    assertThatThrownBy(() -> set(List.of(FLOW, FLOW))).hasMessageContaining("honey-flow twice");
    assertThatThrownBy(() -> set(List.of())).hasMessageContaining("at least one stage");
    assertThatThrownBy(() -> new Threshold(Stage.BROODLESS, 3, 2.0, List.of(), null))
        .hasMessageContaining("upTo is 2");
    List<Band> falling = List.of(new Band(5, "a"), new Band(5, "b"));
    assertThatThrownBy(() -> new Threshold(Stage.BROODLESS, 3, null, falling, null))
        .hasMessageContaining("rise from band to band");
    assertThatThrownBy(() -> new Band(1, " ")).hasMessageContaining("words is blank");
  }
}
