package broodtide.files;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The files of one run on their way into a folder, which is locked meanwhile.
 *
 * <p>They are staged in a hidden folder, the manifest last. A stage without a manifest is the rest
 * of a run that died and is thrown away; a stage with one is whole, and is moved into place by
 * whoever opens the folder next. The manifest is moved last. Whichever instruction a run dies at,
 * the folder therefore holds all of the old files, or all of the new ones in place or in the stage.
 *
 * <p>Ctrl-C waits for a generation that is being written; the moment is short.
 */
final class Generation implements AutoCloseable {
  /** Where files are staged; while its manifest is there, the new generation is the one to take. */
  static final String STAGE = ".broodtide-stage";

  private static final int BUFFER = 1 << 16;

  private final Path folder;
  private final Path stage;
  private final FolderLock lock;
  private final Thread stopper = new Thread(this::release, "unfinished-files");
  private boolean over;

  private Generation(Path folder, FolderLock lock) {
    this.folder = folder;
    this.stage = folder.resolve(STAGE);
    this.lock = lock;
  }

  /** Locks a folder and puts right what a dead run left there. */
  static Generation in(Path folder) throws IOException {
    Generation generation = new Generation(folder, FolderLock.take(folder));
    boolean settled = false;
    try {
      Runtime.getRuntime().addShutdownHook(generation.stopper);
      generation.settle();
      settled = true;
      return generation;
    } catch (IllegalStateException e) {
      throw stopped();
    } finally {
      if (!settled) {
        generation.close();
      }
    }
  }

  /**
   * Puts files in the place of the last generation.
   *
   * @param command whose they are; empty when they are handed over to the user
   */
  synchronized void replace(String command, Map<String, Outputs.Content> files) throws IOException {
    if (over) {
      throw stopped();
    }
    replace(command, files, Optional.empty());
  }

  /**
   * Puts the user's own files in the place of others.
   *
   * @param files the new ones
   * @param old those whose place they take, and those that go
   */
  synchronized void save(Map<String, byte[]> files, Map<String, byte[]> old) throws IOException {
    if (over) {
      throw stopped();
    }
    Map<String, Outputs.Content> contents = new LinkedHashMap<>();
    files.forEach((name, content) -> contents.put(name, out -> out.write(content)));
    replace("", contents, Optional.of(Manifest.sums(old)));
  }

  private void replace(
      String command,
      Map<String, Outputs.Content> files,
      Optional<SortedMap<String, Manifest.Sum>> replaced)
      throws IOException {
    Files.createDirectory(stage);
    SortedMap<String, Manifest.Sum> sums = new TreeMap<>();
    for (Map.Entry<String, Outputs.Content> file : files.entrySet()) {
      sums.put(file.getKey(), write(stage.resolve(file.getKey()), file.getValue()));
    }
    Path manifest = stage.resolve(Manifest.NAME);
    Path begun = stage.resolve(Manifest.NAME + ".part");
    byte[] list = new Manifest(command, sums, replaced).json();
    write(begun, out -> out.write(list));
    force(stage);
    move(begun, manifest);
    force(stage);
    settle();
  }

  /** Moves a whole generation into place, or throws away one that is not whole. */
  private synchronized void settle() throws IOException {
    if (!Files.isDirectory(stage, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Path manifest = stage.resolve(Manifest.NAME);
    if (Files.exists(manifest)) {
      Manifest next = Manifest.read(manifest);
      Manifest last = Manifest.in(folder);
      List<String> waiting =
          next.files().keySet().stream().filter(n -> Files.exists(stage.resolve(n))).toList();
      if (next.replaced().isPresent()) {
        saved(next, waiting, next.replaced().get());
        discard();
        return;
      }
      Claims.check(folder, waiting, last, next);
      for (String name : waiting) {
        move(stage.resolve(name), folder.resolve(name));
      }
      if (!next.command().isEmpty()) {
        for (String name : last.files().keySet()) {
          if (!next.files().containsKey(name) && last.holds(folder.resolve(name))) {
            Files.delete(folder.resolve(name));
          }
        }
        force(folder);
        move(manifest, folder.resolve(Manifest.NAME));
      }
      force(folder);
    }
    discard();
  }

  /**
   * Moves saved files into place, unless one was changed since by somebody else: that one stays.
   */
  private void saved(Manifest next, List<String> waiting, SortedMap<String, Manifest.Sum> old)
      throws IOException {
    Manifest last = new Manifest("", old);
    for (String name : waiting) {
      Path file = folder.resolve(name);
      boolean free = !Files.exists(file, LinkOption.NOFOLLOW_LINKS);
      if (!free && !last.holds(file) && !next.holds(file)) {
        return;
      }
    }
    for (String name : waiting) {
      move(stage.resolve(name), folder.resolve(name));
    }
    for (String name : old.keySet()) {
      if (!next.files().containsKey(name) && last.holds(folder.resolve(name))) {
        Files.delete(folder.resolve(name));
      }
    }
    force(folder);
  }

  private void discard() throws IOException {
    if (Files.isDirectory(stage, LinkOption.NOFOLLOW_LINKS)) {
      // The manifest first: a stage that is half gone must not pass for a whole one.
      Files.deleteIfExists(stage.resolve(Manifest.NAME));
      try (DirectoryStream<Path> rest = Files.newDirectoryStream(stage)) {
        for (Path file : rest) {
          Files.delete(file);
        }
      }
      Files.delete(stage);
    }
  }

  private static Manifest.Sum write(Path file, Outputs.Content content) throws IOException {
    MessageDigest digest = Manifest.Sum.digest();
    try (FileChannel channel =
            FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        OutputStream out =
            new BufferedOutputStream(
                new DigestOutputStream(Channels.newOutputStream(channel), digest), BUFFER)) {
      content.to(out);
      out.flush();
      // Otherwise a power cut soon after could leave the name with nothing behind it.
      channel.force(true);
      return Manifest.Sum.of(channel.size(), digest);
    }
  }

  private static void force(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Some systems open no folders; they keep the order of moves by themselves.
    }
  }

  private static void move(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
  }

  private synchronized void release() {
    if (over) {
      return;
    }
    over = true;
    try {
      if (!Files.exists(stage.resolve(Manifest.NAME))) {
        discard();
      }
    } catch (IOException e) {
      // The next run does it.
    }
    lock.close();
  }

  @Override
  public void close() {
    release();
    try {
      Runtime.getRuntime().removeShutdownHook(stopper);
    } catch (IllegalStateException e) {
      // The program is being stopped.
    }
  }

  private static IOException stopped() {
    return new InterruptedIOException("the program was stopped");
  }
}
