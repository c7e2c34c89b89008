package broodtide.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Entries of a journal are there whole or not at all, wherever a run was killed. */
class JournalTest {
  private static final byte[] MARK = "run of May".getBytes(StandardCharsets.UTF_8);

  @TempDir private Path folder;

  @Test
  void everyCutLeavesTheEntriesBeforeItWhole() throws IOException {
    try (Journal journal = Journal.open(folder, MARK, false)) {
      journal.add("Brook", text("one"));
      journal.add("Žofka", text("of another length"));
      journal.add("Red", text("3"));
    }
    Path file = folder.resolve(Journal.NAME);
    byte[] whole = Files.readAllBytes(file);
    int entries = 0;
    for (int cut = MARK.length; cut <= whole.length; cut++) {
      Files.write(file, Arrays.copyOf(whole, cut));
      try (Journal journal = Journal.open(folder, MARK, true)) {
        assertThat(journal.size()).isGreaterThanOrEqualTo(entries);
        entries = journal.size();
        if (journal.holds("Žofka")) {
          assertThat(read(journal, "Žofka")).isEqualTo("of another length");
          assertThat(read(journal, "Brook")).isEqualTo("one");
        }
        journal.add("added", text("after the cut"));
        assertThat(read(journal, "added")).isEqualTo("after the cut");
      }
    }
    assertThat(entries).isEqualTo(3);
  }

  @Test
  void anEntryOfWhichABitIsWrongIsLetGoWithWhatFollows() throws IOException {
    try (Journal journal = Journal.open(folder, MARK, false)) {
      journal.add("Brook", text("one"));
      journal.add("Red", text("two"));
    }
    Path file = folder.resolve(Journal.NAME);
    byte[] whole = Files.readAllBytes(file);
    whole[whole.length - 1] ^= 1;
    Files.write(file, whole);
    try (Journal journal = Journal.open(folder, MARK, true)) {
      assertThat(journal.holds("Brook")).isTrue();
      assertThat(journal.holds("Red")).isFalse();
    }
  }

  @Test
  void whatAnotherRunDidIsNotGoneOnWith() {
    try (Journal journal = Journal.open(folder, MARK, false)) {
      journal.add("Brook", text("one"));
    }
    byte[] other = text("run of Jun");
    assertThatThrownBy(() -> Journal.open(folder, other, true))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("leave out --resume");
    try (Journal journal = Journal.open(folder, other, false)) {
      assertThat(journal.size()).isZero();
    }
  }

  @Test
  void twoRunsDoNotShareAJournal() {
    try (Journal journal = Journal.open(folder, MARK, false)) {
      assertThat(journal.size()).isZero();
      assertThatThrownBy(() -> Journal.open(folder, MARK, true))
          .isInstanceOf(OutputRefused.class)
          .hasMessageContaining("another run is working there");
    }
  }

  @Test
  void itTakesTheFolderThatItMadeAwayWithIt() throws IOException {
    Path made = folder.resolve("new");
    Journal.open(made, MARK, false).remove();
    assertThat(made).doesNotExist();
    Files.createDirectory(made);
    Journal.open(made, MARK, false).remove();
    assertThat(made).isEmptyDirectory();
  }

  private static byte[] text(String words) {
    return words.getBytes(StandardCharsets.UTF_8);
  }

  private static String read(Journal journal, String key) {
    return new String(journal.read(key, 0, journal.length(key)), StandardCharsets.UTF_8);
  }
}
