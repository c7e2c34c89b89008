package broodtide.files;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Keeps other runs out of a folder for a moment. The system lets go of the lock of a run that dies.
 * The lock is a file, taken away again at the end, and so are folders that were made for it and
 * hold nothing.
 */
final class FolderLock implements AutoCloseable {
  private static final String NAME = ".broodtide-lock";
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  /** Tries in which a folder may stand and yet take no file: others take it away meanwhile. */
  private static final int TRIES = 50;

  private final Path file;
  private final FileChannel channel;
  private final List<Path> made;

  private FolderLock(Path file, FileChannel channel, List<Path> made) {
    this.file = file;
    this.channel = channel;
    this.made = made;
  }

  /** Waits for the lock, up to a minute; makes the folder if need be. */
  static FolderLock take(Path folder) throws IOException {
    Path file = folder.resolve(NAME);
    List<Path> made = new ArrayList<>();
    try {
      long begun = System.nanoTime();
      int tries = 0;
      do {
        for (Path f = folder.toAbsolutePath(); f != null && !Files.exists(f); f = f.getParent()) {
          made.add(f);
        }
        Files.createDirectories(folder);
        try {
          Optional<FileChannel> channel = tried(file);
          if (channel.isPresent()) {
            return new FolderLock(file, channel.get(), made);
          }
        } catch (NoSuchFileException e) {
          if (++tries == TRIES) {
            throw e;
          }
        }
        Thread.sleep(20);
      } while (System.nanoTime() - begun < PATIENCE.toNanos());
      throw new IOException("another run has been writing there for a minute");
    } catch (IOException e) {
      made.forEach(FolderLock::remove);
      throw e;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("the program was stopped");
    }
  }

  /**
   * The lock, unless another run has it or takes the file away at this moment.
   *
   * @throws NoSuchFileException when the folder is gone, or takes no files
   */
  private static Optional<FileChannel> tried(Path file) throws IOException {
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
    boolean held = false;
    try {
      held = channel.tryLock() != null && isStill(file, channel);
    } catch (OverlappingFileLockException e) {
      // Another thread of this program has it.
    } finally {
      if (!held) {
        channel.close();
      }
    }
    return held ? Optional.of(channel) : Optional.empty();
  }

  /** Whether the file of that name is the one that was locked, and not a successor of it. */
  private static boolean isStill(Path file, FileChannel locked) throws IOException {
    byte[] token = UUID.randomUUID().toString().getBytes(StandardCharsets.US_ASCII);
    locked.truncate(0).write(ByteBuffer.wrap(token), 0);
    try {
      return Arrays.equals(Files.readAllBytes(file), token);
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  @Override
  public void close() {
    remove(file);
    try {
      channel.close();
    } catch (IOException e) {
      // The system lets go of it at the end of the program at the latest.
    }
    made.forEach(FolderLock::remove);
  }

  private static void remove(Path path) {
    try {
      Files.deleteIfExists(path);
    } catch (IOException e) {
      // A folder holds something by now, or a file is hidden and harmless.
    }
  }
}
