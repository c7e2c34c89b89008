package broodtide.cli;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.wash.Frame;
import broodtide.wash.WashMethod;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * An apiary drawn at random as a beekeeper could bring it: a place, a table of washes, at times a
 * table of treatments given; and a call of every command that takes these.
 */
final class AnyStudy {
  private static final LocalDate LATEST = LocalDate.of(2025, 11, 20);
  private static final List<String> CONTROLS = Catalog.CONTROLS.names();

  private final SplittableRandom random;
  private final Path folder;
  private final List<LocalDate> days = new ArrayList<>();
  private final List<String> place = new ArrayList<>();

  /**
   * Draws one and writes its tables.
   *
   * @param random sets everything
   * @param folder for tables and results
   */
  AnyStudy(SplittableRandom random, Path folder) throws IOException {
    this.random = random;
    this.folder = folder;
    LocalDate day = LocalDate.of(2025, 1, 1).plusDays(random.nextInt(230));
    int count = random.nextInt(1, 7);
    while (days.size() < count && day.isBefore(LATEST)) {
      days.add(day);
      day = day.plusDays(random.nextInt(12, 50));
    }
    Files.writeString(folder.resolve("washes.csv"), washes(random.nextInt(1, 3)));
    place.addAll(List.of("--climate", oneOf(Catalog.CLIMATES.names())));
    if (random.nextInt(4) == 0) {
      place.add("--south");
    }
  }

  /** Mites grow or fall at a steady rate in each colony, and bees of a wash bear one or none. */
  private String washes(int colonies) {
    StringBuilder csv = new StringBuilder("date,colony,mites,bees,method,frame\n");
    for (int c = 1; c <= colonies; c++) {
      double share = Math.exp(random.nextDouble(-3.5, 2.5)) / 100;
      double growth = random.nextDouble(-0.01, 0.035);
      for (LocalDate day : days) {
        double now = share * Math.exp(growth * (day.toEpochDay() - first().toEpochDay()));
        int bees = random.nextInt(60, 420);
        int mites = 0;
        for (int b = 0; b < bees; b++) {
          mites += random.nextDouble() < Math.min(0.5, now) ? 1 : 0;
        }
        boolean counted = mites > 200 || random.nextInt(4) > 0;
        csv.append(
            String.format(
                Locale.ROOT,
                "%s,Hive %d,%d,%s,%s,%s\n",
                day,
                c,
                mites,
                counted ? Integer.toString(bees) : "",
                oneOf(Arrays.stream(WashMethod.values()).map(WashMethod::id).toList()),
                oneOf(Arrays.stream(Frame.values()).map(Frame::id).toList())));
      }
    }
    return csv.toString();
  }

  /** Every command with words drawn for it, and {@code --out} in the folder where it writes. */
  List<List<String>> calls() throws IOException {
    LocalDate last = days.get(days.size() - 1);
    List<List<String>> calls = new ArrayList<>();
    calls.add(call("wash", "" + random.nextInt(60), "--date", "" + last, "--json"));
    calls.get(0).addAll(place);
    if (random.nextInt(3) == 0) {
      place.addAll(
          List.of(
              "--neighbours",
              oneOf(Arrays.stream(Surroundings.values()).map(Surroundings::word).toList())));
    }
    if (random.nextInt(3) == 0) {
      LocalDate treated = first().plusDays(random.nextInt(40));
      Path given = folder.resolve("given.csv");
      Files.writeString(given, "date,colony,control\n" + treated + ",*," + oneOf(CONTROLS) + "\n");
      place.addAll(List.of("--given", given.toString()));
    }
    String next = last.plusDays(random.nextInt(1, 60)).toString();
    calls.add(onWashes("growth", "--json"));
    calls.add(playing("forecast", "--with", oneOf(CONTROLS)));
    calls.add(playing("compare"));
    calls.add(playing("compare", "--plan", "on " + next + " with " + oneOf(CONTROLS)));
    calls.add(playing("windows", "--controls", oneOf(CONTROLS) + "," + oneOf(CONTROLS)));
    calls.add(playing("rules", "--every", "" + random.nextInt(21, 60)));
    calls.add(playing("worth", "--weeks", "" + random.nextInt(1, 7)));
    String treated = first().plusDays(random.nextInt(1, 60)).toString();
    calls.add(playing("worked", "--treated", treated, "--with", oneOf(CONTROLS)));
    calls.add(playing("backtest"));
    return calls;
  }

  private List<String> onWashes(String command, String... more) {
    List<String> words = call(command, folder.resolve("washes.csv").toString());
    words.addAll(place);
    words.addAll(List.of(more));
    return words;
  }

  private List<String> playing(String command, String... more) {
    List<String> words = onWashes(command, more);
    words.addAll(List.of("--colonies", "256", "--threads", "1", "--quiet", "--out"));
    words.add(folder.resolve("out").toString());
    return words;
  }

  private static List<String> call(String... words) {
    return new ArrayList<>(List.of(words));
  }

  private LocalDate first() {
    return days.get(0);
  }

  private String oneOf(List<String> words) {
    return words.get(random.nextInt(words.size()));
  }
}
