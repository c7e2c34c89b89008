package broodtide.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * What a single word says of counts: a number of mites, or the name of a table of counts.
 *
 * @param mites the number; empty for a table
 * @param table the name of the table; empty for a number
 */
record CountedOrTable(OptionalInt mites, Optional<String> table) {
  /** Reads the word. What is no number and cannot be meant as a file is a number mistyped. */
  static final class Converter implements ITypeConverter<CountedOrTable> {
    @Override
    public CountedOrTable convert(String word) {
      try {
        return new CountedOrTable(OptionalInt.of(Integer.parseInt(word)), Optional.empty());
      } catch (NumberFormatException e) {
        if (meansFile(word)) {
          return new CountedOrTable(OptionalInt.empty(), Optional.of(word));
        }
        throw new TypeConversionException(
            "'" + word + "' is no whole number, and there is no table of counts of that name");
      }
    }

    private static boolean meansFile(String word) {
      try {
        return word.equals("-")
            || word.matches("(?s).*[^0-9.,+\\-].*[./\\\\].*|.*[./\\\\].*[^0-9.,+\\-].*")
            || Files.exists(Path.of(word));
      } catch (InvalidPathException e) {
        return false;
      }
    }
  }
}
