package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The class page uses the report's colours and no others. */
class ClassColoursTest {
  private static final Pattern HEX = Pattern.compile("#[0-9a-fA-F]{3,8}\\b");

  @ParameterizedTest
  @ValueSource(
      strings = {"base.css", "chart.css", "explorer.css", "lesson.css", "print.css", "icon.svg"})
  void coloursAreOfThePalette(String file) throws IOException {
    Set<String> palette = palette();
    Matcher found = HEX.matcher(text(file));
    assertThat(found.results().map(m -> m.group().toLowerCase(Locale.ROOT)))
        .allSatisfy(hex -> assertThat(palette).contains(hex));
  }

  @Test
  void textCanBeReadOnEveryGround() {
    for (Colour ground : new Colour[] {Palette.PAPER, Palette.scale(0), Palette.span(1)}) {
      assertThat(Palette.INK.contrast(ground)).isGreaterThan(7);
      assertThat(Palette.MUTED.contrast(ground)).isGreaterThan(4.5);
      assertThat(Palette.line(0).contrast(ground)).isGreaterThan(7);
    }
  }

  private static Set<String> palette() {
    Set<String> all = new HashSet<>();
    for (Colour c :
        new Colour[] {
          Palette.PAPER, Palette.INK, Palette.MUTED, Palette.GRID, Palette.AXIS, Palette.scale(0)
        }) {
      all.add(hex(c));
    }
    for (int i = 0; i < Palette.kinds(); i++) {
      all.add(hex(Palette.line(i)));
      all.add(hex(Palette.line(i).asText()));
      all.add(hex(Palette.span(i % 3)));
    }
    return all;
  }

  private static String hex(Colour c) {
    return String.format(Locale.ROOT, "#%06x", c.rgb());
  }

  private static String text(String file) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            ClassColoursTest.class.getResourceAsStream("/classroom/static/" + file))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
