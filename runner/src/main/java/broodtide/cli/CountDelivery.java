package broodtide.cli;

import broodtide.chart.Picture;
import broodtide.files.Outputs;
import broodtide.report.AnswerSheet;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Prints what one count says, and writes it where a folder was asked for. */
final class CountDelivery {
  private final CommandContext desk;
  private final FolderOption folder;
  private final boolean json;

  CountDelivery(CommandContext desk, FolderOption folder, boolean json) {
    this.desk = desk;
    this.folder = folder;
    this.json = json;
  }

  /** The folder, looked at before any work is done; empty where none was asked for. */
  Optional<Outputs> open() {
    return folder.open(List.of());
  }

  /**
   * Delivers an answer.
   *
   * @param outputs from {@link #open}
   * @param picture only drawn for a folder
   * @param results as JSON, only made where it is asked for
   */
  int deliver(
      Optional<Outputs> outputs,
      List<String> sentences,
      Supplier<? extends Picture> picture,
      Supplier<String> results) {
    if (json) {
      desk.out().print(results.get());
    } else {
      sentences.forEach(s -> desk.out().println(desk.terminal().wrap(s)));
    }
    desk.deliver();
    outputs.ifPresent(
        to -> {
          AnswerSheet sheet = AnswerSheet.about("");
          sentences.forEach(sheet::say);
          folder.write(
              to,
              desk,
              sheet,
              List.of(),
              picture.get(),
              "The higher the curve, the likelier the infestation below it, as an alcohol wash of"
                  + " all bees would show it. The whole area is 100 %.",
              results.get(),
              !json);
        });
    return Main.OK;
  }
}
