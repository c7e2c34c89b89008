package broodtide.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CampaignTest {
  @TempDir private Path folder;
  private final Map<Long, Integer> drawn = new ConcurrentHashMap<>();

  private Campaign campaign(long seed) {
    return new Campaign("test", folder, seed, 7, Duration.ofSeconds(1));
  }

  @Test
  void goesOnWhereItStopped() throws Exception {
    assertThat(campaign(1).run(20, (n, r) -> drawn.put(n, r.nextInt()))).isEqualTo(20);
    assertThat(drawn).hasSize(20);
    drawn.clear();
    assertThat(campaign(1).run(50, (n, r) -> drawn.put(n, r.nextInt()))).isEqualTo(30);
    assertThat(drawn.keySet()).hasSize(30).contains(20L, 49L).doesNotContain(19L);
    assertThat(campaign(1).run(50, (n, r) -> drawn.put(n, 0))).isZero();
    assertThat(campaign(2).run(3, (n, r) -> {})).as("another seed begins anew").isEqualTo(3);
  }

  @Test
  void aCaseHangsOnSeedAndNumberAlone() throws Exception {
    campaign(1).run(30, (n, r) -> drawn.put(n, r.nextInt()));
    Map<Long, Integer> again = new ConcurrentHashMap<>();
    for (long n : List.of(29L, 0L, 11L)) {
      campaign(1).repeat(n, (number, r) -> again.put(number, r.nextInt()));
    }
    assertThat(drawn).containsAllEntriesOf(again);
    assertThat(Set.copyOf(drawn.values())).hasSize(30);
    campaign(2).repeat(11, (n, r) -> assertThat(r.nextInt()).isNotEqualTo(drawn.get(n)));
  }

  @Test
  void faultsAreKeptAndTheRestIsDone() {
    Campaign.Trial trial =
        (n, r) -> {
          drawn.put(n, 0);
          if (n == 3) {
            throw new IllegalStateException("three");
          }
        };
    for (int run = 0; run < 2; run++) {
      assertThatThrownBy(() -> campaign(1).run(10, trial)).hasMessageStartingWith("1 faults");
    }
    assertThat(folder.resolve("test-1.faults"))
        .content()
        .startsWith("case 3: java.lang.IllegalStateException: three");
    assertThat(drawn).hasSize(10);
  }

  @Test
  void slowCasesAreFaults() {
    Campaign hasty = new Campaign("test", folder, 1, 2, Duration.ofMillis(20));
    assertThatThrownBy(
            () ->
                hasty.run(
                    2,
                    (n, r) -> {
                      long end = System.nanoTime() + (n == 1 ? Duration.ofSeconds(5).toNanos() : 0);
                      while (System.nanoTime() < end && !Thread.interrupted()) {
                        r.nextInt();
                      }
                    }))
        .isInstanceOf(AssertionError.class);
    assertThat(folder.resolve("test-1.faults"))
        .content()
        .containsPattern("case 1: (took \\d+ ms|did not end)");
  }
}
