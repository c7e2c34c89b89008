package broodtide.forms;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;

/** Where a text comes from: a file of the user's, the shipped library, or memory. */
public sealed interface Source {
  /** Largest text read, bytes. */
  int LARGEST = 5 * 1024 * 1024;

  /** {@return the name as messages show it} */
  String name();

  /** {@return whether there is something to read} */
  boolean exists();

  /**
   * {@return another source whose name is given relative to this one}
   *
   * @param relative a path such as {@code washes.csv}
   * @throws BadInput when no file can have that name
   */
  Source beside(String relative);

  /**
   * Opens it.
   *
   * @return a stream from its beginning; the caller closes it
   * @throws IOException when it cannot be opened
   */
  InputStream open() throws IOException;

  /**
   * {@return a file}
   *
   * @param path the file
   */
  static Source of(Path path) {
    return new OnDisk(path);
  }

  /** {@return the working directory, beside which paths are looked for that stand in no file} */
  static Source here() {
    return of(Path.of(""));
  }

  /**
   * {@return a text at hand, such as one that came through a pipe} What lies beside it is looked
   * for in the working directory.
   *
   * @param name name to show in messages
   * @param text the text
   */
  static Source of(String name, String text) {
    return new AtHand(name, text);
  }

  /**
   * {@return the whole text, with byte order marks taken off}
   *
   * @throws BadInput when it is missing, larger than {@link #LARGEST} or not in UTF-8
   */
  default String text() {
    byte[] bytes;
    try (InputStream in = open()) {
      bytes = in.readNBytes(LARGEST + 1);
    } catch (IOException e) {
      throw BadInput.of(
          Fault.of(name(), "cannot be read; check that the file is there and may be read"));
    }
    if (bytes.length > LARGEST) {
      throw BadInput.of(Fault.of(name(), "is larger than 5 MB; no file of this kind need be"));
    }
    try {
      return withoutMarks(
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (CharacterCodingException e) {
      throw BadInput.of(Fault.of(name(), "is not plain text in UTF-8; save it as UTF-8"));
    }
  }

  /** The text without byte order marks before it, of which joined files have several. */
  static String withoutMarks(String text) {
    int from = 0;
    while (from < text.length() && text.charAt(from) == '\uFEFF') {
      from++;
    }
    return text.substring(from);
  }

  /** A file on disk. */
  record OnDisk(Path path) implements Source {
    @Override
    public String name() {
      return path.toString();
    }

    /** A pipe, such as a shell's {@code <(...)}, is as good as a file. */
    @Override
    public boolean exists() {
      return Files.exists(path) && !Files.isDirectory(path);
    }

    /** Beside a pipe there is nothing; the working directory stands in. */
    @Override
    public Source beside(String relative) {
      boolean pipe = exists() && !Files.isRegularFile(path);
      return new OnDisk(resolve(pipe ? Path.of("") : path, relative));
    }

    @Override
    public InputStream open() throws IOException {
      return Files.newInputStream(path);
    }

    private static Path resolve(Path from, String relative) {
      try {
        return from.resolveSibling(relative);
      } catch (InvalidPathException e) {
        String file = from.toString().isEmpty() ? "file name" : from.toString();
        String why =
            "no file can have this name here; if it has accents or other letters, run with a locale"
                + " of UTF-8, for instance LC_ALL=C.UTF-8";
        throw BadInput.of(new Fault(file, 0, 0, "", relative, why));
      }
    }
  }

  /**
   * A text that may come to stand in a file; what it names lies beside that file.
   *
   * @param path the file
   * @param content the text
   */
  record Draft(Path path, String content) implements Source {
    @Override
    public String name() {
      return path.toString();
    }

    @Override
    public boolean exists() {
      return true;
    }

    @Override
    public Source beside(String relative) {
      return new OnDisk(OnDisk.resolve(path, relative));
    }

    @Override
    public InputStream open() {
      return new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8));
    }
  }

  /** A text in memory. */
  record AtHand(String name, String content) implements Source {
    @Override
    public boolean exists() {
      return true;
    }

    @Override
    public Source beside(String relative) {
      return new OnDisk(OnDisk.resolve(Path.of(""), relative));
    }

    @Override
    public InputStream open() {
      return new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8));
    }
  }

  /**
   * A file of the shipped library.
   *
   * @param folder folder of the library
   * @param file file name in it
   */
  record Shipped(String folder, String file) implements Source {
    @Override
    public String name() {
      return file;
    }

    @Override
    public boolean exists() {
      return file.matches("[a-z0-9.-]+") && Source.class.getResource(resource()) != null;
    }

    @Override
    public Source beside(String relative) {
      return new Shipped(folder, relative);
    }

    @Override
    public InputStream open() throws IOException {
      if (!exists()) {
        throw new IOException("the library has no " + resource());
      }
      return Objects.requireNonNull(Source.class.getResourceAsStream(resource()));
    }

    private String resource() {
      return "/library/" + folder + "/" + file;
    }
  }
}
