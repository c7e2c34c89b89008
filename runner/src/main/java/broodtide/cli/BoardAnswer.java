package broodtide.cli;

import broodtide.assessment.Caution;
import broodtide.assessment.CountOutlook;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
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
  private BoardAnswer() {}

  static int give(CountDelivery delivery, BoardCount board, Climate year, ThresholdSet thresholds) {
    Optional<Outputs> outputs = delivery.open();
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
    return delivery.deliver(outputs, sentences, () -> BoardPicture.of(outlook), results::text);
  }
}
