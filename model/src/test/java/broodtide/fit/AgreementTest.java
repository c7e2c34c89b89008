package broodtide.fit;

import static broodtide.fit.Invented.four;
import static broodtide.fit.Invented.posterior;
import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Workers;
import broodtide.fit.UnknownSummary.Learned;
import broodtide.wash.Wash;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Washes that the model can and cannot explain, and what is said of them. */
class AgreementTest {
  private static final Workers TWO = new Workers(2);

  @AfterAll
  static void close() {
    TWO.close();
  }

  private static Agreement agreement(List<Wash> washes) {
    return Agreement.of(posterior(season(120), washes, 1024, 1, TWO), TWO);
  }

  @Test
  void ordinaryWashesAgree() {
    Agreement a = agreement(four());
    assertThat(a.contradicts()).isFalse();
    assertThat(a.usual()).isBetween(0.05, 1.0);
  }

  /** Up and down by factors of fifty within a fortnight, without any treatment. */
  @Test
  void plantedContradictionIsNoticed() {
    Agreement a =
        agreement(
            List.of(
                wash(0, 0, 300),
                wash(14, 90, 300),
                wash(28, 0, 300),
                wash(42, 95, 300),
                wash(56, 0, 300)));
    assertThat(a.contradicts()).isTrue();
  }

  /** A fall of nine tenths in June is what an unrecorded treatment looks like. */
  @Test
  void unrecordedTreatmentIsNoticed() {
    List<Wash> fallen =
        List.of(wash(0, 45, 300), wash(10, 54, 300), wash(35, 4, 300), wash(60, 3, 300));
    Agreement without = agreement(fallen);
    Agreement with = Agreement.of(posterior(season(120, strips(11)), fallen, 1024, 1, TWO), TWO);
    assertThat(without.usual()).isLessThan(with.usual());
    assertThat(without.contradicts()).isTrue();
    assertThat(with.contradicts()).isFalse();
  }

  @Test
  void howMuchWasLearnedIsSaidOfEachUnknown() {
    Map<Unknown, Learned> learned = new EnumMap<>(Unknown.class);
    posterior(season(120), four(), 1024, 1, TWO)
        .summaries()
        .forEach(s -> learned.put(s.unknown(), s.learned()));
    assertThat(learned)
        .containsEntry(Unknown.INFESTATION, Learned.MUCH)
        .containsEntry(Unknown.REINVASION, Learned.LITTLE);
  }
}
