package broodtide.assessment;

import broodtide.assessment.HiveChance.Seasons;
import broodtide.assessment.HiveChance.Share;
import broodtide.control.Control;
import broodtide.control.Plan;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Supplier;

/**
 * Rows of the sheet put away as bytes, so that an apiary may have more hives than memory holds what
 * its counts must know of them. Only the version of the program that wrote a record reads it.
 *
 * <p>A row that is read holds a kilobyte or two; what is alike in many rows is held once. Not safe
 * to share between threads; the rows are, as far as the places are from which their records come.
 *
 * @since 0.2.0
 */
public final class HiveRecords {
  private final Map<List<Share>, List<Share>> shares = new HashMap<>();
  private final Map<String, Plan> plans = new HashMap<>();

  /** Without any row yet. */
  public HiveRecords() {}

  /**
   * {@return a row as bytes}
   *
   * @param row the row
   */
  public static byte[] bytes(HiveRow row) {
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    SeasonRecords seasons = new SeasonRecords();
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    try {
      writeHead(new DataOutputStream(head), row, seasons);
      DataOutputStream out = new DataOutputStream(all);
      out.writeInt(head.size());
      head.writeTo(out);
      seasons.write(out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all.toByteArray();
  }

  private static void writeHead(DataOutputStream out, HiveRow row, SeasonRecords seasons)
      throws IOException {
    band(out, row.infestation());
    out.writeLong(row.judgedOn().toEpochDay());
    band(out, row.judged());
    decision(out, row.decision());
    maybe(out, number(row.wash().map(WashGain::gain)));
    maybe(out, number(row.wash().map(WashGain::changes)));
    Map<String, HiveLoss> losses = new TreeMap<>(row.lost());
    out.writeBoolean(row.over().isPresent());
    if (row.over().isPresent()) {
      chance(out, row.over().get(), seasons);
    }
    out.writeInt(losses.size());
    for (Map.Entry<String, HiveLoss> lost : losses.entrySet()) {
      out.writeUTF(lost.getKey());
      out.writeDouble(lost.getValue().mites());
      chance(out, lost.getValue().chance(), seasons);
    }
  }

  private static void band(DataOutputStream out, QuantileSummary s) throws IOException {
    for (double v : new double[] {s.q05(), s.q25(), s.median(), s.q75(), s.q95()}) {
      out.writeDouble(v);
    }
  }

  private static void decision(DataOutputStream out, Decision d) throws IOException {
    out.writeLong(d.date().toEpochDay());
    out.writeUTF(d.thresholdSet());
    maybe(out, d.threshold());
    maybe(out, d.overThresholdToday());
    out.writeBoolean(d.winterLossTold());
    out.writeBoolean(d.reachesSpring());
    out.writeBoolean(d.reachesWinterBees());
    summary(out, d.waiting());
    out.writeBoolean(d.ranking().isPresent());
    if (d.ranking().isPresent()) {
      PlanRanking ranking = d.ranking().get();
      summary(out, ranking.best());
      out.writeInt(ranking.tied().size());
      for (PlanSummary tied : ranking.tied()) {
        summary(out, tied);
      }
    }
  }

  private static void summary(DataOutputStream out, PlanSummary s) throws IOException {
    out.writeUTF(s.plan().name());
    out.writeBoolean(s.from().isPresent());
    out.writeLong(s.from().map(LocalDate::toEpochDay).orElse(0L));
    out.writeDouble(s.winterLoss());
    maybe(out, s.infestedWinterBrood());
    out.writeDouble(s.infestation());
    out.writeInt(s.courses());
    out.writeInt(s.daysWithSupers());
    out.writeBoolean(s.lastControl().isPresent());
    out.writeUTF(s.lastControl().orElse(""));
  }

  private static void maybe(DataOutputStream out, OptionalDouble value) throws IOException {
    out.writeBoolean(value.isPresent());
    out.writeDouble(value.orElse(0));
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  private static void chance(DataOutputStream out, HiveChance chance, SeasonRecords seasons)
      throws IOException {
    out.writeDouble(chance.chance());
    out.writeInt(chance.shared().size());
    for (Share s : chance.shared()) {
      out.writeUTF(s.what());
      out.writeDouble(s.share());
      out.writeDouble(s.common());
    }
    seasons.add(chance.seasons());
  }

  /**
   * {@return the row of a record}
   *
   * @param c the colony that it is of
   * @param laid plans that were laid for the colony, waiting among them
   * @param record gives the bytes, now and whenever a count of the apiary asks for the colony
   */
  public HiveRow row(ColonyCase c, List<Plan> laid, Supplier<byte[]> record) {
    byte[] bytes = record.get();
    int head = ByteBuffer.wrap(bytes).getInt();
    try (DataInputStream in =
        new DataInputStream(new ByteArrayInputStream(bytes, Integer.BYTES, head))) {
      return new Reading(c, laid, record, in).row();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The plan of a name; colonies that have the same plan hold one and the same. */
  private Plan plan(List<Plan> laid, String name) {
    Plan plan =
        laid.stream()
            .filter(p -> p.name().equals(name))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no plan \"" + name + "\" was laid"));
    StringBuilder key = new StringBuilder(name);
    for (Control c : plan.controls()) {
      key.append('|').append(c.name()).append(' ').append(c.from()).append(' ').append(c.to());
    }
    return plans.computeIfAbsent(key.toString(), k -> plan);
  }

  /** A record on its way back into a row. */
  private final class Reading {
    private final ColonyCase c;
    private final List<Plan> laid;
    private final Supplier<byte[]> record;
    private final DataInputStream in;
    private int chances;

    Reading(ColonyCase c, List<Plan> laid, Supplier<byte[]> record, DataInputStream in) {
      this.c = c;
      this.laid = laid;
      this.record = record;
      this.in = in;
    }

    HiveRow row() throws IOException {
      QuantileSummary infestation = band();
      LocalDate judgedOn = LocalDate.ofEpochDay(in.readLong());
      QuantileSummary judged = band();
      Decision decision = decision();
      OptionalDouble gain = maybe();
      OptionalDouble changes = maybe();
      Optional<HiveChance> over =
          in.readBoolean() ? Optional.of(chance()) : Optional.<HiveChance>empty();
      int losses = in.readInt();
      Map<String, HiveLoss> lost = new LinkedHashMap<>();
      for (int i = 0; i < losses; i++) {
        String plan = plan(laid, in.readUTF()).name();
        double mites = in.readDouble();
        lost.put(plan, new HiveLoss(chance(), mites));
      }
      return new HiveRow(
          c.colony(),
          HiveRow.lastWash(c),
          HiveRow.lastBoard(c),
          infestation,
          judgedOn,
          judged,
          decision,
          NextCount.of(c.washes(), c.now()),
          gain.isPresent()
              ? Optional.of(new WashGain(gain.getAsDouble(), changes.orElse(0)))
              : Optional.empty(),
          over,
          lost);
    }

    private QuantileSummary band() throws IOException {
      return new QuantileSummary(
          in.readDouble(), in.readDouble(), in.readDouble(), in.readDouble(), in.readDouble());
    }

    private Decision decision() throws IOException {
      return new Decision(
          LocalDate.ofEpochDay(in.readLong()),
          in.readUTF().intern(),
          maybe(),
          maybe(),
          in.readBoolean(),
          in.readBoolean(),
          in.readBoolean(),
          summary(),
          in.readBoolean() ? Optional.of(ranking()) : Optional.empty());
    }

    private PlanRanking ranking() throws IOException {
      PlanSummary best = summary();
      int tied = in.readInt();
      List<PlanSummary> others = new ArrayList<>();
      for (int i = 0; i < tied; i++) {
        others.add(summary());
      }
      return new PlanRanking(best, others);
    }

    private PlanSummary summary() throws IOException {
      Plan plan = plan(laid, in.readUTF());
      boolean begins = in.readBoolean();
      LocalDate from = LocalDate.ofEpochDay(in.readLong());
      double loss = in.readDouble();
      OptionalDouble brood = maybe();
      double infestation = in.readDouble();
      int courses = in.readInt();
      int supers = in.readInt();
      boolean uses = in.readBoolean();
      String last = in.readUTF().intern();
      return new PlanSummary(
          plan,
          begins ? Optional.of(from) : Optional.empty(),
          loss,
          brood,
          infestation,
          courses,
          supers,
          uses ? Optional.of(last) : Optional.empty());
    }

    private OptionalDouble maybe() throws IOException {
      boolean known = in.readBoolean();
      double value = in.readDouble();
      return known ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    private HiveChance chance() throws IOException {
      double own = in.readDouble();
      int count = in.readInt();
      List<Share> shared = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        shared.add(new Share(in.readUTF(), in.readDouble(), in.readDouble()));
      }
      int which = chances++;
      // These outlive the reading: they may hold on to nothing of it but what they need.
      ColonyCase colony = c;
      Supplier<byte[]> place = record;
      return new HiveChance(
          colony.colony(),
          colony.yard(),
          own,
          shares.computeIfAbsent(shared, s -> List.copyOf(s)),
          () -> seasons(colony, place.get(), which));
    }
  }

  private static Seasons seasons(ColonyCase c, byte[] bytes, int which) {
    int begin = Integer.BYTES + ByteBuffer.wrap(bytes).getInt();
    ByteBuffer in = ByteBuffer.wrap(bytes, begin, bytes.length - begin);
    return SeasonRecords.read(in, c.winter().survival(), which);
  }
}
