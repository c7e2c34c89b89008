package broodtide.cli;

import broodtide.files.Journal;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a run has found of one hive, as an entry of its journal.
 *
 * @param refused why nothing can be said of the hive; empty where something was found
 * @param said what is to be said of it beside the sheet
 * @param row its row of the sheet
 * @param line its results as JSON on one line
 */
@SuppressWarnings("ArrayRecordComponent") // passed on, never compared
record HiveEntry(Optional<String> refused, List<String> said, byte[] row, String line) {
  private static final int HEAD = 3 * Integer.BYTES;

  static HiveEntry refused(String reason) {
    return new HiveEntry(Optional.of(reason), List.of(), new byte[0], "");
  }

  /** The entry as bytes: three lengths, and the parts. */
  byte[] bytes() {
    ByteArrayOutputStream words = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(words)) {
      out.writeBoolean(refused.isPresent());
      out.writeUTF(refused.orElse(""));
      out.writeInt(said.size());
      for (String sentence : said) {
        out.writeUTF(sentence);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    byte[] json = line.getBytes(StandardCharsets.UTF_8);
    return ByteBuffer.allocate(HEAD + words.size() + row.length + json.length)
        .putInt(words.size())
        .putInt(row.length)
        .putInt(json.length)
        .put(words.toByteArray())
        .put(row)
        .put(json)
        .array();
  }

  /** Where the parts of an entry stand in a journal. */
  record Kept(Journal journal, String hive, int words, int row, int json) {
    static Kept in(Journal journal, String hive) {
      ByteBuffer head = ByteBuffer.wrap(journal.read(hive, 0, HEAD));
      return new Kept(journal, hive, head.getInt(), head.getInt(), head.getInt());
    }

    byte[] rowBytes() {
      return journal.read(hive, HEAD + words, row);
    }

    byte[] lineBytes() {
      return journal.read(hive, HEAD + words + row, json);
    }

    /** What is said, without the row and the results. */
    HiveEntry spoken() {
      try (DataInputStream in =
          new DataInputStream(new ByteArrayInputStream(journal.read(hive, HEAD, words)))) {
        boolean refused = in.readBoolean();
        String reason = in.readUTF();
        int count = in.readInt();
        List<String> said = new ArrayList<>();
        for (int i = 0; i < count; i++) {
          said.add(in.readUTF());
        }
        return new HiveEntry(
            refused ? Optional.of(reason) : Optional.empty(), said, new byte[0], "");
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
