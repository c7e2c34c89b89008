package broodtide.files;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Whose a folder of results is. A folder belongs to the command that wrote its results.json, so
 * that no command loses the results of another.
 */
public final class Belongings {
  /** The file that says whose a folder is. */
  public static final String RESULTS = "results.json";

  private Belongings() {}

  /**
   * Makes sure that a command may write into a folder.
   *
   * @param folder the folder
   * @param command the command
   * @throws OutputRefused when the folder holds results that are not of this command
   */
  public static void check(Path folder, String command) {
    Path results = folder.resolve(RESULTS);
    if (!Files.isRegularFile(results)) {
      return;
    }
    Optional<String> owner = owner(results);
    if (owner.isEmpty() || !owner.get().equals(command)) {
      throw new OutputRefused(
          results
              + " holds "
              + owner.map(o -> "the results of '" + o + "'").orElse("something else")
              + " and is left as it is; give another folder with --out");
    }
  }

  /** The command that a file of results names, which stands before its colonies. */
  private static Optional<String> owner(Path results) {
    try (JsonParser in = new JsonFactory().createParser(results.toFile())) {
      if (in.nextToken() != JsonToken.START_OBJECT) {
        return Optional.empty();
      }
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String field = in.currentName();
        in.nextToken();
        if (field.equals("tool")) {
          return Optional.ofNullable(in.getValueAsString());
        }
        in.skipChildren();
      }
      return Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
