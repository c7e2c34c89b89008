package broodtide.report;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.HiveRow;
import broodtide.assessment.QuantileSummary;
import broodtide.terminal.Table;
import broodtide.terminal.Terminal;
import broodtide.wash.Wash;
import broodtide.words.ApiaryWords;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The sheet of an apiary as a table for the terminal. Names of hives and plans are cut, and the
 * bees of the last count left out, as far as the terminal is too narrow for them.
 */
public final class SheetTerminalTable {
  private static final String NONE = "-";

  /** What a terminal has room for, the most first. */
  private record Room(int hive, int plan, boolean bees) {}

  private static final List<Room> ROOMS =
      List.of(
          new Room(30, 40, true),
          new Room(20, 30, true),
          new Room(16, 24, true),
          new Room(16, 20, false),
          new Room(12, 17, false));

  private SheetTerminalTable() {}

  /**
   * {@return the table that fits; the narrowest where none does}
   *
   * @param sheet the apiary
   * @param terminal the terminal
   */
  public static Table of(ApiarySheet sheet, Terminal terminal) {
    return ROOMS.stream()
        .map(room -> table(sheet, room))
        .filter(terminal::fits)
        .findFirst()
        .orElseGet(() -> table(sheet, ROOMS.get(ROOMS.size() - 1)));
  }

  private static Table table(ApiarySheet sheet, Room room) {
    boolean plans = sheet.plansLaid();
    boolean losses = sheet.knowsWinterLoss();
    List<Table.Column> heads = new ArrayList<>();
    heads.add(Table.Column.words("Hive"));
    heads.add(Table.Column.words("counted"));
    heads.add(Table.Column.numbers("now"));
    heads.add(Table.Column.numbers("90 %"));
    heads.add(Table.Column.numbers("over"));
    if (!plans || !losses) {
      heads.add(Table.Column.numbers(Plain.shortDay(sheet.judgedOn())));
      heads.add(Table.Column.numbers("90 %"));
    }
    if (losses) {
      heads.add(Table.Column.numbers("loss"));
    }
    if (plans) {
      heads.add(Table.Column.words("lowest " + (losses ? "loss" : "brood")));
    }
    if (plans && losses) {
      heads.add(Table.Column.numbers("gain"));
    }
    Table table = Table.of(heads.toArray(Table.Column[]::new));
    for (HiveRow row : sheet.rows()) {
      List<String> cells = new ArrayList<>();
      cells.add(Terminal.cut(row.hive(), room.hive()));
      cells.add(counted(row, room.bees()));
      band(cells, row.infestation());
      cells.add(chance(row.decision().overThresholdToday()));
      if (!plans || !losses) {
        band(cells, row.judged());
      }
      if (losses) {
        cells.add(chance(row.winterLoss()));
      }
      if (plans) {
        cells.add(
            Terminal.cut(row.decision().best().plan().name(), room.plan())
                + (row.decision().tied().isEmpty() ? "" : " ="));
      }
      if (plans && losses) {
        cells.add(row.decision().best().waits() ? NONE : chance(row.gain()));
      }
      table = table.row(cells.toArray(String[]::new));
    }
    return table;
  }

  /**
   * {@return one plan for the whole apiary as a table}
   *
   * @param plans from {@link ApiarySheet#together}, not empty
   */
  public static Table of(List<ApiaryPlan> plans) {
    Table table =
        Table.of(
            Table.Column.words("With " + Terminal.cut(plans.get(0).plan(), 28)),
            Table.Column.numbers("treated"),
            Table.Column.numbers("lost"),
            Table.Column.numbers("90 %"),
            Table.Column.numbers("saved"),
            Table.Column.numbers("90 %"),
            Table.Column.numbers("mites"));
    for (ApiaryPlan plan : plans) {
      table =
          table.row(
              ApiaryWords.whom(plan),
              Integer.toString(plan.treated()),
              Digits.two(plan.lost().mean()),
              plan.lost().low() + " to " + plan.lost().high(),
              plan.treated() == 0 ? NONE : brief(ApiaryWords.saved(plan)),
              plan.treated() == 0 ? NONE : plan.saved().low() + " to " + plan.saved().high(),
              Digits.two(plan.mitesInLost()));
    }
    return table;
  }

  private static String counted(HiveRow row, boolean bees) {
    return row.lastBoard()
        .map(b -> Plain.shortDay(b.date()) + " " + b.mites() + "/board")
        .or(() -> row.lastCount().map(w -> counted(w, bees)))
        .orElse(NONE);
  }

  private static String counted(Wash w, boolean bees) {
    return Plain.shortDay(w.date())
        + " "
        + w.mites()
        + (!bees ? "" : w.beesAssumed() ? "/cup" : "/" + w.bees().getAsInt());
  }

  private static void band(List<String> cells, QuantileSummary s) {
    cells.add(brief(Plain.level(s.median())));
    cells.add(brief(Plain.levels(s.q05(), s.q95())));
  }

  private static String chance(OptionalDouble chance) {
    return chance.isEmpty() ? NONE : brief(Digits.chance(chance.getAsDouble()).replace(" %", ""));
  }

  private static String brief(String level) {
    return level.replace("over ", ">").replace("more than ", ">").replace("under ", "<");
  }

  /**
   * {@return what the columns mean, in one paragraph}
   *
   * @param sheet the apiary
   */
  public static String legend(ApiarySheet sheet) {
    boolean plans = sheet.plansLaid();
    boolean losses = sheet.knowsWinterLoss();
    StringBuilder s = new StringBuilder("Most urgent first. counted: last count, mites");
    s.append(" found");
    if (sheet.rows().stream().anyMatch(r -> r.lastBoard().isPresent())) {
      s.append(", /board those fallen on a board");
    }
    s.append(". now: mites per 100 adult bees today, with the 90 % interval.");
    s.append(" over: chance of being over the treatment threshold today, in %.");
    if (!plans || !losses) {
      s.append(' ').append(Plain.shortDay(sheet.judgedOn())).append(": mites per 100 if you wait.");
    }
    if (losses) {
      s.append(" loss: chance that the colony is dead or too weak by spring if you wait, in %.");
    }
    if (plans && losses) {
      s.append(
          " lowest loss: the plan with the lowest loss of all plans. gain: by how much it lowers"
              + " it.");
    }
    if (sheet.rows().stream().anyMatch(r -> !r.decision().tied().isEmpty())) {
      s.append(" =: other plans cannot be told from it.");
    }
    if (sheet.over().isPresent()) {
      s.append(' ').append(ApiaryWords.BETWEEN);
    }
    return s.toString();
  }
}
