package broodtide.cluster;

import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.files.Csv;
import broodtide.fit.SeasonBanks;
import broodtide.results.SheetColumns;
import broodtide.study.RowSieve.Table;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;

/**
 * The job's work in one process without an engine, to measure the job by: the same rows, yards,
 * banks and figures on plain threads, and of the tables the sheet alone. It reads one CSV file of
 * sound washes.
 */
public final class PlainThreads {
  private static final int PARTS_PER_THREAD = 4;

  private PlainThreads() {}

  /**
   * Writes the sheet.
   *
   * @param args the number of threads, and the job's own words
   */
  public static void main(String[] args) throws IOException {
    ClusterMain words = new ClusterMain(YardWorker.CORE, System.out, System.err, JobRun.TODAY);
    new CommandLine(words)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .parseArgs(Arrays.copyOfRange(args, 1, args.length));
    Path out = Files.createDirectories(Path.of(words.folder));
    Files.writeString(
        out.resolve("sheet.csv"),
        sheet(words.question(), Path.of(words.washes), Integer.parseInt(args[0])));
  }

  static String sheet(Question question, Path washes, int threads) throws IOException {
    List<Yard> yards = yards(question, washes);
    LocalDate newest =
        yards.stream()
            .flatMap(y -> y.hives().stream())
            .map(Hive::newest)
            .max(Comparator.naturalOrder())
            .orElseThrow();
    YardWorker worker =
        new YardWorker(
            question,
            Objects.requireNonNullElse(question.decideOn(), newest.plusDays(1)),
            null,
            YardWorker.CORE);
    SeasonBanks banks = new SharedSeasons(question.colonies()).here();
    int parts = PARTS_PER_THREAD * threads;
    List<List<YardResult>> results = new ArrayList<>();
    for (int p = 0; p < parts; p++) {
      results.add(new ArrayList<>());
    }
    try (Workers workers = new Workers(threads)) {
      workers.run(
          parts,
          p -> {
            int from = p * yards.size() / parts;
            int to = (p + 1) * yards.size() / parts;
            worker
                .each(yards.subList(from, to).iterator(), banks)
                .forEachRemaining(results.get(p)::add);
          },
          Progress.NONE);
    }
    return text(results.stream().flatMap(List::stream));
  }

  private static List<Yard> yards(Question question, Path washes) throws IOException {
    Map<String, List<InputRow>> byColony = new TreeMap<>();
    try (InputStream in = Files.newInputStream(washes)) {
      Iterator<InputTables.Sifted> rows =
          InputTables.csv(
              Table.WASHES, in, washes.toString(), ColonyRows.FURTHER, question.today());
      while (rows.hasNext()) {
        InputRow row = Objects.requireNonNull(rows.next().row());
        byColony.computeIfAbsent(ColonyRows.colony(row), c -> new ArrayList<>()).add(row);
      }
    }
    List<Hive> hives = new ArrayList<>();
    byColony.forEach(
        (colony, rows) ->
            hives.add(
                Objects.requireNonNull(
                    ColonyRows.of(colony, rows, List.of(), List.of(), question.today()).hive())));
    Map<YardKey, List<Hive>> byYard =
        hives.stream()
            .collect(Collectors.groupingBy(YardKey::of, TreeMap::new, Collectors.toList()));
    List<Yard> yards = new ArrayList<>();
    byYard.forEach(
        (key, own) ->
            yards.add(
                Objects.requireNonNull(YardRows.of(key, own, question.usualClimate()).yard())));
    yards.sort(Comparator.comparing(YardOrder::of));
    return yards;
  }

  private static String text(Stream<YardResult> yards) {
    StringBuilder out = new StringBuilder(Csv.lineOf(SheetColumns.names()));
    yards
        .flatMap(yard -> yard.lines().stream())
        .sorted(Comparator.comparing(YardResult.Line::urgency))
        .forEach(line -> out.append(Csv.lineOf(Csv.cells(line.cells().cells()))));
    return out.toString();
  }
}
