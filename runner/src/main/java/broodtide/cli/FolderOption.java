package broodtide.cli;

import broodtide.chart.Picture;
import broodtide.files.Outputs;
import broodtide.report.AnswerSheet;
import broodtide.report.PictureFiles;
import broodtide.report.RunFacts;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A folder for what a command writes that answers at once and else writes nothing. */
final class FolderOption {
  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec mixedInto;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Write a report, a picture and results.json to this folder.")
  private @Nullable Path out;

  @Option(names = "--png", description = "Write the picture as PNG too.")
  private boolean png;

  /**
   * Opens the folder before any work is done; empty when none is asked for.
   *
   * @param further files that were read besides those that the command line names
   */
  Optional<Outputs> open(List<Path> further) {
    if (out == null) {
      return Optional.empty();
    }
    List<String> names = new ArrayList<>(List.of(AnswerFiles.REPORT));
    names.addAll(pictures().names(command().name(), List.of("")));
    names.add(Outputs.RESULTS);
    List<Path> inputs = new ArrayList<>(RunOptions.named(command()));
    inputs.addAll(further);
    return Optional.of(Outputs.into(out, command().name(), inputs, names));
  }

  /**
   * Writes report, picture and results, once the answer is out.
   *
   * @param to the folder
   * @param sheet what was said
   * @param notes what was assumed
   * @param picture the picture
   * @param caption how to read it
   * @param json the results
   * @param said whether the answer was said in words, so that the files are named in words as well
   */
  void write(
      Outputs to,
      CommandContext desk,
      AnswerSheet sheet,
      List<String> notes,
      Picture picture,
      String caption,
      String json,
      boolean said) {
    sheet.draw(picture, caption);
    PictureFiles pictures = pictures();
    pictures.add(command().name(), "", picture);
    pictures.lacking().ifPresent(desk.err()::println);
    RunFacts facts =
        new RunFacts(command().name(), Version.number(), 0, 0, CommandWords.of(command()));
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(AnswerFiles.REPORT, AnswerFiles.page(command(), List.of(sheet), notes, facts));
    files.putAll(pictures.files());
    files.put(Outputs.RESULTS, json.getBytes(StandardCharsets.UTF_8));
    to.write(files);
    if (said) {
      desk.add(desk.terminal().wrap(AnswerFiles.written(to.folder(), files.keySet())));
    }
  }

  private PictureFiles pictures() {
    return new PictureFiles(false, png);
  }

  private CommandSpec command() {
    return Objects.requireNonNull(mixedInto, "the options belong to a command");
  }
}
