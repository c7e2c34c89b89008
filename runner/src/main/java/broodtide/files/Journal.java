package broodtide.files;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * What a long run has done so far, kept in a hidden file of its folder until its results are
 * written. A run that is killed loses what was under way and nothing else: each entry is there
 * whole, by length and sum, or is not there.
 *
 * <p>Safe to share between threads.
 */
public final class Journal implements AutoCloseable {
  /** The hidden file. */
  static final String NAME = ".broodtide-hives";

  private static final int HEAD = Integer.BYTES + Integer.BYTES;

  private final Path file;
  private final FileChannel channel;
  private final boolean madeFolder;
  private final Map<String, Entry> entries = new HashMap<>();
  private long end;

  /** Where the bytes of an entry stand in the file. */
  private record Entry(long at, int length) {}

  private Journal(Path file, FileChannel channel, boolean madeFolder) {
    this.file = file;
    this.channel = channel;
    this.madeFolder = madeFolder;
  }

  /**
   * Opens the journal of a folder, which is made if need be.
   *
   * @param folder the folder that the results will be written to
   * @param mark tells runs apart; the same run of the same input has the same
   * @param goOn whether to keep what a run of the same mark has done; otherwise it begins anew
   * @return the journal, which no other run may open meanwhile
   * @throws OutputRefused when it cannot be written, another run has it, or it is to go on with
   *     what another run did
   */
  public static Journal open(Path folder, byte[] mark, boolean goOn) {
    Path file = folder.resolve(NAME);
    try {
      boolean made = !Files.exists(folder);
      Files.createDirectories(folder);
      FileChannel channel =
          FileChannel.open(
              file,
              StandardOpenOption.CREATE,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE,
              LinkOption.NOFOLLOW_LINKS);
      boolean open = false;
      try {
        if (!locked(channel)) {
          throw new OutputRefused(
              folder, "another run is working there; wait for it, or give another folder", null);
        }
        Journal journal = new Journal(file, channel, made);
        journal.begin(mark, goOn);
        open = true;
        return journal;
      } finally {
        if (!open) {
          channel.close();
        }
      }
    } catch (IOException e) {
      throw new OutputRefused(folder, Outputs.reason(e), e);
    }
  }

  private static boolean locked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      // Another thread of this program has it.
      return false;
    }
  }

  private void begin(byte[] mark, boolean goOn) throws IOException {
    if (goOn && channel.size() >= mark.length) {
      if (!Arrays.equals(bytes(0, mark.length), mark)) {
        throw new OutputRefused(
            file,
            "is what another run did: other counts, other options or another version of the"
                + " program; give the same, or leave out --resume to begin anew",
            null);
      }
      end = mark.length;
      takeStock();
    } else {
      channel.truncate(0);
      write(ByteBuffer.wrap(mark), 0);
      end = mark.length;
    }
    channel.truncate(end);
  }

  /** Finds the entries that are whole; what follows the last of them was under way. */
  private void takeStock() throws IOException {
    long size = channel.size();
    while (size - end > HEAD) {
      ByteBuffer head = ByteBuffer.wrap(bytes(end, HEAD));
      int length = head.getInt();
      int sum = head.getInt();
      if (length <= 0 || length > size - end - HEAD) {
        return;
      }
      byte[] body = bytes(end + HEAD, length);
      if (sum(body) != sum) {
        return;
      }
      enter(body);
    }
  }

  /** Takes in a body that stands at the end. */
  private void enter(byte[] body) {
    int name = ByteBuffer.wrap(body).getInt();
    String key = new String(body, Integer.BYTES, name, StandardCharsets.UTF_8);
    int skip = Integer.BYTES + name;
    entries.put(key, new Entry(end + HEAD + skip, body.length - skip));
    end += HEAD + body.length;
  }

  private static int sum(byte[] body) {
    CRC32 sum = new CRC32();
    sum.update(body);
    return (int) sum.getValue();
  }

  /**
   * Adds an entry.
   *
   * @param key its name, which no other has
   * @param content what it holds
   * @throws OutputRefused when it cannot be written
   */
  public synchronized void add(String key, byte[] content) {
    try {
      byte[] name = key.getBytes(StandardCharsets.UTF_8);
      ByteArrayOutputStream body =
          new ByteArrayOutputStream(Integer.BYTES + name.length + content.length);
      DataOutputStream out = new DataOutputStream(body);
      out.writeInt(name.length);
      out.write(name);
      out.write(content);
      byte[] bytes = body.toByteArray();
      ByteBuffer whole = ByteBuffer.allocate(HEAD + bytes.length);
      whole.putInt(bytes.length).putInt(sum(bytes)).put(bytes).flip();
      write(whole, end);
      enter(bytes);
    } catch (IOException e) {
      throw new OutputRefused(file, Outputs.reason(e), e);
    }
  }

  private void write(ByteBuffer bytes, long at) throws IOException {
    long to = at;
    while (bytes.hasRemaining()) {
      to += channel.write(bytes, to);
    }
  }

  /**
   * {@return whether there is an entry}
   *
   * @param key its name
   */
  public synchronized boolean holds(String key) {
    return entries.containsKey(key);
  }

  /** {@return how many entries there are} */
  public synchronized int size() {
    return entries.size();
  }

  /**
   * {@return how many bytes an entry holds}
   *
   * @param key its name
   */
  public int length(String key) {
    return entry(key).length();
  }

  /**
   * {@return a part of an entry}
   *
   * @param key its name
   * @param from first byte, from 0
   * @param length bytes
   * @throws OutputRefused when it cannot be read
   */
  public byte[] read(String key, int from, int length) {
    try {
      return bytes(entry(key).at() + from, length);
    } catch (IOException e) {
      throw new OutputRefused(file, Outputs.reason(e), e);
    }
  }

  private synchronized Entry entry(String key) {
    Entry entry = entries.get(key);
    if (entry == null) {
      throw new IllegalArgumentException("there is no entry \"" + key + "\"");
    }
    return entry;
  }

  private byte[] bytes(long at, int length) throws IOException {
    ByteBuffer out = ByteBuffer.allocate(length);
    while (out.hasRemaining()) {
      if (channel.read(out, at + out.position()) < 0) {
        throw new EOFException("the file was cut short");
      }
    }
    return out.array();
  }

  /** Takes the file away, once what it holds stands elsewhere or nothing is to stay. */
  public void remove() {
    try {
      close();
      Files.deleteIfExists(file);
      if (madeFolder) {
        Files.deleteIfExists(file.toAbsolutePath().getParent());
      }
    } catch (NoSuchFileException e) {
      // Somebody took the folder away.
    } catch (IOException e) {
      // The folder holds results by now, or the file is hidden and the next run replaces it.
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      // Every entry is written already.
    }
  }
}
