package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import broodtide.forms.BadInput;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever bytes a file holds, it is read or refused with {@link BadInput}; nothing else comes. */
class AnyFileTest {
  private static final int TRIES = 600;

  @ParameterizedTest
  @EnumSource
  void samplesAreSound(AnyFile kind) {
    kind.samples().forEach(s -> assertThat(kind.holds(s)).isTrue());
  }

  @ParameterizedTest
  @EnumSource
  void changedBytes(AnyFile kind) {
    SplittableRandom random = new SplittableRandom(20_270_401 + kind.ordinal());
    List<byte[]> samples = kind.samples();
    int read = 0;
    for (int i = 0; i < TRIES; i++) {
      byte[] bytes = samples.get(i % samples.size());
      for (int k = random.nextInt(4); k >= 0; k--) {
        bytes = AnyFile.spoiled(bytes, random);
      }
      try {
        read += kind.holds(bytes) ? 1 : 0;
      } catch (RuntimeException | Error e) {
        fail(kind + ", change " + i + ": " + Base64.getEncoder().encodeToString(bytes), e);
      }
    }
    assertThat(read).as("some survive, some do not").isBetween(1, TRIES - 1);
  }

  @ParameterizedTest
  @EnumSource
  void noise(AnyFile kind) {
    SplittableRandom random = new SplittableRandom(20_270_402);
    for (int i = 0; i < 100; i++) {
      byte[] bytes = new byte[random.nextInt(300)];
      random.nextBytes(bytes);
      assertThat(kind.holds(bytes)).isFalse();
    }
  }

  @ParameterizedTest
  @EnumSource
  void hugeThings(AnyFile kind) {
    for (String text :
        List.of(
            "x".repeat(2_000_000),
            "\n".repeat(500_000),
            ",".repeat(200_000),
            "[".repeat(100_000),
            "{\"a\":".repeat(50_000),
            "\"" + "\\".repeat(200_001) + "\"",
            "date,colony,mites,bees\n2025-01-01," + "y".repeat(500_000) + ",1,300\n",
            "{\"name\": \"" + "z".repeat(1_000_000) + "\"}",
            "{\"name\": 1" + "0".repeat(900_000) + "}",
            "{\"name\": 1e999999999}")) {
      assertThat(kind.holds(text.getBytes(StandardCharsets.UTF_8))).isFalse();
    }
  }

  /** A name a megabyte long once took minutes to be set in lines. */
  @Test
  void cellsHaveABound() {
    String cell = "n".repeat(121);
    assertThat(
            AnyFile.WASHES.holds(
                ("date,colony,mites,bees\n2025-01-01," + cell + ",1,300\n")
                    .getBytes(StandardCharsets.UTF_8)))
        .isFalse();
  }
}
