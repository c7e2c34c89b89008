package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every picture, at page and phone width. */
class PictureTest {
  static Stream<Arguments> pictures() {
    Size phone = Size.PHONE;
    Stream<Arguments> figures =
        InventedFigures.all().entrySet().stream()
            .flatMap(
                e ->
                    Stream.of(
                        Arguments.of(e.getKey(), e.getValue()),
                        Arguments.of(e.getKey() + ", phone", e.getValue().sized(phone))));
    Stream<Arguments> seasons =
        Stream.of(
            Arguments.of("forecast", InventedSeason.forecast()),
            Arguments.of("forecast, phone", InventedSeason.forecast().sized(phone)),
            Arguments.of("forecast, logarithmic", InventedSeason.forecast().logarithmic()),
            Arguments.of("crowded", InventedSeason.crowded()),
            Arguments.of("crowded, phone", InventedSeason.crowded().sized(phone)),
            Arguments.of("crowded, logarithmic", InventedSeason.crowded().logarithmic()),
            Arguments.of("seven plans", InventedSeason.sevenPlans()),
            Arguments.of("seven plans, phone", InventedSeason.sevenPlans().sized(phone)),
            Arguments.of("colony", InventedSeason.colony()),
            Arguments.of("colony, phone", InventedSeason.colony().sized(phone)),
            Arguments.of("windows", InventedSeason.windows()),
            Arguments.of("windows, phone", InventedSeason.windows().sized(phone)));
    return Stream.concat(seasons, figures);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pictures")
  void textsStandApartInsideThePictureAndAreLargeEnough(String name, Picture picture) {
    Drawn drawn = Drawn.of(picture);
    List<Drawn.Word> words = drawn.words();
    assertThat(words).hasSizeGreaterThan(8);
    for (int i = 0; i < words.size(); i++) {
      Drawn.Word a = words.get(i);
      assertThat(a.size()).as(a.text()).isGreaterThanOrEqualTo(13);
      assertThat(drawn.viewBox().holds(a.room().x(), a.room().y())).as(a.text()).isTrue();
      assertThat(drawn.viewBox().holds(a.room().right(), a.room().bottom())).as(a.text()).isTrue();
      for (Drawn.Word b : words.subList(i + 1, words.size())) {
        assertThat(a.room().overlaps(b.room())).as("'%s' over '%s'", a.text(), b.text()).isFalse();
      }
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pictures")
  void titleIsRealTextAndReadAloud(String name, Picture picture) {
    Drawn drawn = Drawn.of(picture);
    String all = String.join(" ", drawn.words().stream().map(Drawn.Word::text).toList());
    assertThat(all).contains(picture.heading().title());
    assertThat(drawn.root().getAttribute("role")).isEqualTo("img");
    assertThat(Drawn.elements(drawn.root(), "title").get(0).getTextContent())
        .isEqualTo(picture.heading().title());
    assertThat(Drawn.elements(drawn.root(), "desc").get(0).getTextContent())
        .isEqualTo(picture.description());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pictures")
  void svgIsSmallAndTheSameEveryTimeInEveryCountry(String name, Picture picture) {
    String once = picture.svg();
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(picture.svg()).isEqualTo(once);
    } finally {
      Locale.setDefault(before);
    }
    assertThat(once.length()).isLessThan(60_000);
    // Identifiers would clash when several pictures stand in one page.
    assertThat(once).doesNotContain(" id=").doesNotContain("NaN").doesNotContain("Infinity");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pictures")
  void pngHasTwoDotsPerUnitAndIsNotBlank(String name, Picture picture) throws IOException {
    var image = ImageIO.read(new ByteArrayInputStream(picture.png()));
    assertThat(image.getWidth()).isEqualTo(2 * picture.drawn().width());
    assertThat(image.getHeight()).isEqualTo(2 * picture.drawn().height());
    long inked = 0;
    for (int x = 0; x < image.getWidth(); x++) {
      for (int y = 0; y < image.getHeight(); y++) {
        inked += (image.getRGB(x, y) & 0xffffff) == 0xffffff ? 0 : 1;
      }
    }
    double share = (double) inked / image.getWidth() / image.getHeight();
    assertThat(share).isBetween(0.08, 0.8);
    // Nothing is cut off at the rim.
    for (int x = 0; x < image.getWidth(); x++) {
      assertThat(image.getRGB(x, 0) & 0xffffff).isEqualTo(0xffffff);
      assertThat(image.getRGB(x, image.getHeight() - 1) & 0xffffff).isEqualTo(0xffffff);
    }
  }
}
