package broodtide.files;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Whether names of a folder are free for a run's files, or taken by files that are not ours. */
final class Claims {
  private static final String REMEDY =
      " and is left as it is; give another folder with --out, or move the file away";

  private Claims() {}

  /**
   * Makes sure that a folder holds nothing under some names but what this program wrote. Capital
   * letters make no difference, as on many disks they make none.
   *
   * @param last what the folder should hold
   * @param next what may be in place already
   * @throws OutputRefused with the first file that is not ours
   */
  static void check(Path folder, Collection<String> names, Manifest last, Manifest next)
      throws IOException {
    Set<String> wanted =
        names.stream().map(n -> n.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    try (DirectoryStream<Path> there = Files.newDirectoryStream(folder)) {
      for (Path file : there) {
        String name = file.getFileName().toString();
        if (!wanted.contains(name.toLowerCase(Locale.ROOT))) {
          continue;
        }
        if (Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
          throw new OutputRefused(file, "a folder of this name is in the way", null);
        }
        if (!last.holds(file) && !next.holds(file)) {
          throw new OutputRefused(
              file,
              (last.files().containsKey(name)
                      ? "was changed since this program wrote it"
                      : "was not written by this program")
                  + REMEDY);
        }
      }
    }
  }

  /**
   * Makes sure that a folder is not the one of another command.
   *
   * @throws OutputRefused when it holds that command's results
   */
  static void checkOwner(Path folder, String command, Manifest last) {
    boolean any = last.files().keySet().stream().anyMatch(n -> Files.exists(folder.resolve(n)));
    if (any && !command.isEmpty() && !last.command().equals(command)) {
      throw new OutputRefused(
          folder,
          "holds the results of '"
              + last.command()
              + "' and is left as it is; give another folder with --out");
    }
  }

  /**
   * Makes sure that nothing that a run reads is among files that it replaces or takes away. Links
   * to a file and other names of it count as the file.
   *
   * @throws OutputRefused with the file
   */
  static void checkInputs(Path folder, Collection<Path> inputs, Collection<String> names)
      throws IOException {
    for (String name : names) {
      Path file = folder.resolve(name);
      for (Path input : inputs) {
        if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
          throw new OutputRefused(
              file,
              "is read by this run, which would write a file of that name; it is left as it is;"
                  + " give another folder with --out");
        }
      }
    }
  }
}
