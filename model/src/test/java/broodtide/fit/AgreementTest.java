package broodtide.fit;

import static broodtide.fit.Invented.four;
import static broodtide.fit.Invented.posterior;
import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.util.List;
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
    assertThat(a.words()).isEmpty();
    assertThat(a.usual()).isBetween(0.05, 1.0);
  }

  /** Up and down by factors of fifty within a fortnight, without any treatment. */
  @Test
  void plantedContradictionIsSaidWithItsCauses() {
    Agreement a =
        agreement(
            List.of(
                wash(0, 0, 300),
                wash(14, 90, 300),
                wash(28, 0, 300),
                wash(42, 95, 300),
                wash(56, 0, 300)));
    assertThat(a.contradicts()).isTrue();
    assertThat(a.words()).hasSize(1);
    assertThat(a.words().get(0))
        .contains("do not fit the model")
        .contains("miscount")
        .contains("treatment")
        .contains("Robbing")
        .contains("another kind of frame");
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
  void sentencesSayWhatWasLearned() {
    List<String> words = PosteriorNarrative.sentences(posterior(season(120), four(), 1024, 1, TWO));
    assertThat(words.get(0))
        .startsWith("Your washes say much about mites per 100 bees at the start");
    assertThat(String.join(" ", words))
        .containsPattern(" say little about [^.]*reinvasion")
        .endsWith(" There the forecast rests on what is usual.");
  }

  @Test
  void treatmentsAreNamedInSentences() {
    List<Wash> washes = List.of(wash(0, 20, 300), wash(60, 18, 300), wash(90, 30, 300));
    assertThat(
            PosteriorNarrative.sentences(posterior(season(120, strips(10)), washes, 512, 1, TWO)))
        .anyMatch(s -> s.contains("how well \"strips of day 10\" of 2025-05-11 worked"));
  }
}
