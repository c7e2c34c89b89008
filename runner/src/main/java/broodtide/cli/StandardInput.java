package broodtide.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;

/** Standard input, or the plain fact that it is closed. */
final class StandardInput {
  private StandardInput() {}

  /**
   * Standard input of this program. When it is closed, Linux gives its number to the first file
   * that the JVM opens, one of its own, which would be read as if the user had sent it.
   */
  static InputStream here() {
    try {
      Path open = Path.of("/proc/self/fd/0").toRealPath();
      Path java = Path.of(System.getProperty("java.home", "")).toRealPath();
      return open.startsWith(java) ? new Closed() : System.in;
    } catch (IOException e) {
      // A pipe has no path, and other systems have no such folder.
      return System.in;
    }
  }

  /** What reading a closed input comes to. */
  static final class Closed extends InputStream {
    @Override
    public int read() throws IOException {
      throw new IOException("it is closed; send the table through a pipe, or name a file");
    }
  }
}
