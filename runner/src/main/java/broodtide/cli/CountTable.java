package broodtide.cli;

import broodtide.assessment.Caution;
import broodtide.assessment.CountReading;
import broodtide.assessment.CountSheet;
import broodtide.assessment.YearStages;
import broodtide.files.Outputs;
import broodtide.report.AnswerSheet;
import broodtide.report.ApiaryPicture;
import broodtide.results.CountPrecision;
import broodtide.results.ResultsFile;
import broodtide.season.Climate;
import broodtide.study.WashFile;
import broodtide.terminal.Table;
import broodtide.terminal.Terminal;
import broodtide.wash.Interval;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import broodtide.words.ApiaryWords;
import broodtide.words.Digits;
import broodtide.words.Plain;
import broodtide.words.ThresholdWords;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A table of counts as a sheet: what the counts of one day say, hive by hive. */
final class CountTable {
  private static final int NAME = 30;

  private final CommandContext desk;
  private final FolderOption folder;
  private final boolean json;

  CountTable(CommandContext desk, FolderOption folder, boolean json) {
    this.desk = desk;
    this.folder = folder;
    this.json = json;
  }

  /**
   * Answers.
   *
   * @param name the table's name, or a dash for standard input
   * @param day the day whose counts are wanted; null for the newest
   * @param year the year of the place
   * @param thresholds what the counts are held against
   * @param precision how sure a count is
   */
  int answer(
      String name,
      @Nullable LocalDate day,
      Climate year,
      ThresholdSet thresholds,
      Function<CountReading, CountPrecision> precision) {
    WashFile file = read(name);
    TreeSet<LocalDate> days = new TreeSet<>(file.washes().stream().map(Wash::date).toList());
    if (days.isEmpty()) {
      throw new Refusal(
          name
              + " has mites on boards alone, and 'wash' shows washes; add one, or use 'broodtide"
              + " forecast'");
    }
    LocalDate shown = day == null ? days.last() : day;
    if (!days.contains(shown)) {
      throw new Refusal(
          "--date: "
              + shown
              + " has no count in "
              + name
              + "; its newest counts are of "
              + days.last()
              + (days.size() > 1 ? ", the oldest of " + days.first() : ""));
    }
    List<Wash> washes = file.washes().stream().filter(w -> w.date().equals(shown)).toList();
    CountSheet sheet = CountSheet.of(washes, year, thresholds);
    List<String> notes = new ArrayList<>(file.notes());
    notes.addAll(ThresholdWords.notes(new YearStages(year), thresholds, shown));
    if (days.size() > 1) {
      notes.add(
          0,
          "The counts of "
              + Plain.day(shown)
              + " alone are shown, of "
              + days.size()
              + " days in the table; --date shows another. All counts together say more:"
              + " 'broodtide forecast'.");
    }
    ApiaryWords.countedOften(sheet).ifPresent(note -> notes.add(0, note));
    Optional<Outputs> outputs = folder.open(List.of());
    List<String> cautions = cautions(washes);
    ResultsFile results = new ResultsFile("wash", Version.number(), concat(notes, cautions));
    results.add(sheet, precision);
    String headline = ApiaryWords.headline(sheet);
    if (json) {
      desk.out().print(results.text());
    } else {
      print(sheet, headline, notes, cautions);
    }
    desk.deliver();
    outputs.ifPresent(
        to -> {
          AnswerSheet page = AnswerSheet.about("");
          page.say(headline);
          page.show(table(sheet), "Each count by itself, with its 90 % interval.");
          folder.write(
              to,
              desk,
              page,
              notes,
              ApiaryPicture.of(sheet),
              "Each count with its 90 % interval, on a logarithmic scale: equal steps to the right"
                  + " are equal factors.",
              results.text(),
              !json);
        });
    return Main.OK;
  }

  private WashFile read(String name) {
    LocalDate today = LocalDate.now(desk.clock());
    if (name.equals("-")) {
      try {
        return WashFile.read(desk.in(), "standard input", today);
      } catch (IOException e) {
        throw UserFile.cannotRead("standard input", e);
      }
    }
    return UserFile.read(name, "the table of counts", in -> WashFile.read(in, name, today));
  }

  private void print(CountSheet sheet, String headline, List<String> notes, List<String> cautions) {
    Terminal terminal = desk.terminal();
    desk.out().println(terminal.wrap(headline));
    desk.out().println();
    desk.out().println(terminal.table(table(sheet)).stripTrailing());
    desk.out()
        .println(
            terminal.faint(
                terminal.wrap(
                    "per 100: mites counted per 100 bees, with the 90 % interval of the"
                        + " count alone. over: the chance, by this count alone, of being"
                        + " over the treatment threshold.")));
    desk.out().println();
    notes.forEach(note -> desk.out().println(terminal.wrap(note)));
    desk.out().println(terminal.wrap(String.join(" ", concat(List.of(Caution.ANSWER), cautions))));
  }

  private static Table table(CountSheet sheet) {
    Table table =
        Table.of(
            Table.Column.words("Hive"),
            Table.Column.numbers("mites"),
            Table.Column.numbers("bees"),
            Table.Column.numbers("per 100"),
            Table.Column.numbers("90 %"),
            Table.Column.numbers("over"));
    for (CountReading r : sheet.rows()) {
      Interval exact = r.exact();
      table =
          table.row(
              Terminal.cut(r.wash().colony(), NAME),
              Digits.count(r.wash().mites()),
              r.wash().beesAssumed()
                  ? "half cup"
                  : Digits.count(Math.round(r.wash().beesOrAssumed())),
              Digits.two(r.wash().perHundred()),
              Plain.levels(exact.low(), exact.high()),
              r.threshold().isEmpty() ? "-" : Digits.chance(r.chanceAbove()));
    }
    return table;
  }

  private static List<String> cautions(List<Wash> washes) {
    return washes.stream().anyMatch(w -> w.method().id().startsWith(WashMethod.ALCOHOL.id()))
        ? List.of(Caution.ALCOHOL)
        : List.of();
  }

  private static List<String> concat(List<String> first, List<String> second) {
    List<String> all = new ArrayList<>(first);
    all.addAll(second);
    return all;
  }
}
