package broodtide.files;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Files of one folder while they are written: each under a name of its own until all are whole.
 * Closed before they are in place, they are gone, and so is the folder if it was made for them; the
 * same when the program is stopped meanwhile, by Ctrl-C for instance.
 */
final class Parts implements AutoCloseable {
  private final Map<Path, Path> parts = new LinkedHashMap<>();

  /** Folders that were not there before, deepest first. */
  private final List<Path> made = new ArrayList<>();

  private final Thread sweeper = new Thread(this::sweep, "unfinished-files");
  private boolean over;

  private Parts() {}

  /** Makes a folder, if need be, to write into. */
  static Parts in(Path folder) throws IOException {
    Parts parts = new Parts();
    try {
      Runtime.getRuntime().addShutdownHook(parts.sweeper);
    } catch (IllegalStateException e) {
      throw stopped(e);
    }
    try {
      parts.make(folder);
    } catch (IOException e) {
      parts.close();
      throw e;
    }
    return parts;
  }

  private synchronized void make(Path folder) throws IOException {
    for (Path f = folder.toAbsolutePath(); f != null && !Files.exists(f); f = f.getParent()) {
      made.add(f);
    }
    Files.createDirectories(folder);
  }

  /** Writes a file under a name of its own. */
  synchronized void fill(Path place, byte[] content) throws IOException {
    if (over) {
      throw stopped(null);
    }
    Path part = beside(place);
    parts.put(part, place);
    try (FileChannel channel =
        FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(content);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      // Otherwise a power cut soon after could leave the name with nothing behind it.
      channel.force(true);
    }
  }

  /** Gives every file its name; whoever stops the program waits until all have theirs. */
  synchronized void place() throws IOException {
    if (over) {
      throw stopped(null);
    }
    for (Map.Entry<Path, Path> part : parts.entrySet()) {
      if (Files.isDirectory(part.getValue())) {
        throw new FileSystemException(
            part.getKey().toString(),
            part.getValue().toString(),
            "a folder of this name is in the way");
      }
    }
    for (Map.Entry<Path, Path> part : parts.entrySet()) {
      move(part.getKey(), part.getValue());
    }
    made.clear();
  }

  private static void move(Path part, Path place) throws IOException {
    try {
      Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, place, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private synchronized void sweep() {
    over = true;
    parts.keySet().forEach(Parts::remove);
    made.forEach(Parts::remove);
  }

  private static void remove(Path path) {
    try {
      Files.deleteIfExists(path);
    } catch (IOException e) {
      // A left-over part is hidden and harmless, and a folder may hold another's file by now; what
      // matters has been reported already.
    }
  }

  @Override
  public void close() {
    sweep();
    try {
      Runtime.getRuntime().removeShutdownHook(sweeper);
    } catch (IllegalStateException e) {
      // The program is being stopped, and the sweeper has its turn.
    }
  }

  private static IOException stopped(@Nullable Throwable cause) {
    InterruptedIOException e = new InterruptedIOException("the program was stopped");
    if (cause != null) {
      e.initCause(cause);
    }
    return e;
  }

  /** A name no other run uses at the same time. */
  private static Path beside(Path place) {
    String name =
        "."
            + place.getFileName()
            + "."
            + ProcessHandle.current().pid()
            + "."
            + Thread.currentThread().getId()
            + ".part";
    return place.resolveSibling(name);
  }
}
