package broodtide.cluster;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Washes of invented hives: three rounds of one summer, in yards of one size and three regions. */
final class InventedTable {
  static final String HEAD = "date,colony,mites,bees,yard,region,climate";

  private InventedTable() {}

  /** The rows, without the head. */
  static List<String> rows(int hives, int perYard) {
    Random random = new Random(7);
    List<String> out = new ArrayList<>();
    String[] months = {"05", "07", "08"};
    int[] most = {3, 9, 24};
    for (int h = 0; h < hives; h++) {
      int yard = h / perYard;
      for (int round = 0; round < months.length; round++) {
        out.add(
            "2026-%s-%02d,Hive %05d,%d,%d,Yard %03d,Region %d,"
                .formatted(
                    months[round],
                    3 + yard % 20,
                    h,
                    random.nextInt(most[round]),
                    280 + random.nextInt(50),
                    yard,
                    yard % 3));
      }
    }
    return out;
  }

  /** The first round of washes alone. */
  static List<String> firstRound(int hives, int perYard) {
    return rows(hives, perYard).stream().filter(row -> row.startsWith("2026-05")).toList();
  }

  static String csv(List<String> rows) {
    return HEAD + "\n" + String.join("\n", rows) + "\n";
  }
}
