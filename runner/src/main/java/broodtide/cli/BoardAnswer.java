package broodtide.cli;

import broodtide.assessment.Caution;
import broodtide.assessment.CountOutlook;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.report.AnswerSheet;
import broodtide.report.BoardPicture;
import broodtide.results.ResultsFile;
import broodtide.season.Climate;
import broodtide.wash.BoardCount;
import broodtide.wash.ThresholdSet;
import broodtide.words.BoardWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What mites on one board say. */
final class BoardAnswer {
  private final CommandContext desk;
  private final FolderOption folder;
  private final boolean json;

  BoardAnswer(CommandContext desk, FolderOption folder, boolean json) {
    this.desk = desk;
    this.folder = folder;
    this.json = json;
  }

  int answer(BoardCount board, Climate year, ThresholdSet thresholds) {
    Optional<Outputs> outputs = folder.open(List.of());
    CountOutlook outlook;
    try (Workers workers = Workers.all()) {
      outlook = CountOutlook.of(board, year, thresholds, workers);
    }
    List<String> sentences = new ArrayList<>(BoardWords.alone(outlook));
    outlook.ahead().ifPresent(o -> sentences.add(WashWords.ahead(o)));
    sentences.add(BoardWords.WASH_TELLS_MORE);
    sentences.add(Caution.ANSWER);
    ResultsFile results =
        new ResultsFile(
            "wash",
            Version.number(),
            CountOutlook.SEED,
            CountOutlook.COLONIES,
            List.of(BoardWords.WASH_TELLS_MORE));
    results.addBoard(outlook);
    if (json) {
      desk.out().print(results.text());
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
              BoardPicture.of(outlook),
              "The higher the curve, the likelier the infestation below it, as an alcohol wash of"
                  + " all bees would show it. The whole area is 100 %.",
              results.text(),
              !json);
        });
    return Main.OK;
  }
}
