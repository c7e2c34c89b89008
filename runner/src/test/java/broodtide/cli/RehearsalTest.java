package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RehearsalTest {
  @TempDir Path folder;

  @Test
  void everyCommandIsPlayedToItsEnd() {
    Path study = Path.of("../scenarios/library/studies/larkmeadow.csv");
    assertThat(Rehearsal.play(study, folder)).isEqualTo(Main.OK);
    assertThat(folder).isDirectoryContaining(made -> made.endsWith("compare"));
    assertThat(folder).isDirectoryContaining(made -> made.endsWith("worked"));
  }

  @Test
  void aTableThatIsMissingEndsTheRehearsal() {
    assertThat(Rehearsal.play(folder.resolve("none.csv"), folder)).isEqualTo(Main.BAD_INPUT);
  }
}
