package broodtide.assessment;

import broodtide.assessment.HiveChance.Seasons;
import broodtide.engine.Survival;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Simulated colonies of one hive, as far as counts of the apiary ask for them, as bytes. Ranks that
 * several counts ask for, as most do, are written once.
 */
final class SeasonRecords {
  private static final byte OVER = 0;
  private static final byte LOST = 1;

  private final List<short[]> ranks = new ArrayList<>();
  private final List<Seasons> all = new ArrayList<>();
  private final List<List<Integer>> uses = new ArrayList<>();

  void add(Seasons seasons) {
    List<Integer> used = new ArrayList<>();
    for (short[] r : seasons.ranks()) {
      used.add(place(r));
    }
    all.add(seasons);
    uses.add(used);
  }

  private int place(short[] wanted) {
    for (int i = 0; i < ranks.size(); i++) {
      if (Arrays.equals(ranks.get(i), wanted)) {
        return i;
      }
    }
    ranks.add(wanted);
    return ranks.size() - 1;
  }

  void write(DataOutputStream out) throws IOException {
    out.writeInt(ranks.size());
    for (short[] r : ranks) {
      ByteBuffer bytes = ByteBuffer.allocate(Integer.BYTES + r.length * Short.BYTES);
      bytes.putInt(r.length).asShortBuffer().put(r);
      out.write(bytes.array());
    }
    for (int i = 0; i < all.size(); i++) {
      ByteBuffer counted = counted(all.get(i).counted());
      out.writeInt(Integer.BYTES * (1 + uses.get(i).size()) + counted.position());
      out.writeInt(uses.get(i).size());
      for (int u : uses.get(i)) {
        out.writeInt(u);
      }
      out.write(counted.array(), 0, counted.position());
    }
  }

  private static ByteBuffer counted(Counted counted) {
    if (counted instanceof Counted.Over over) {
      int n = over.over().length;
      ByteBuffer out = ByteBuffer.allocate(1 + Integer.BYTES + n * (Double.BYTES + 1));
      out.put(OVER).putInt(n);
      for (int i = 0; i < n; i++) {
        out.putDouble(over.living()[i]).put((byte) (over.over()[i] ? 1 : 0));
      }
      return out;
    }
    if (counted instanceof Counted.Lost lost) {
      int n = lost.then().length;
      ByteBuffer out =
          ByteBuffer.allocate(1 + Integer.BYTES + 2 * Long.BYTES + 2 * n * Float.BYTES);
      out.put(LOST).putInt(n).putLong(lost.from().toEpochDay()).putLong(lost.day().toEpochDay());
      for (int i = 0; i < n; i++) {
        out.putFloat(lost.then()[i]).putFloat(lost.least()[i]);
      }
      return out;
    }
    throw new IllegalArgumentException("no record is made of a " + counted.getClass());
  }

  /**
   * {@return some of the simulated colonies}
   *
   * @param in stands at the beginning of what {@link #write} wrote
   * @param survival the winter of the place
   * @param which number of the count, in the order in which they were added
   */
  static Seasons read(ByteBuffer in, Survival survival, int which) {
    int distinct = in.getInt();
    int[] begins = new int[distinct];
    for (int i = 0; i < distinct; i++) {
      begins[i] = in.position();
      int n = in.getInt();
      in.position(in.position() + n * Short.BYTES);
    }
    for (int i = 0; i < which; i++) {
      int skip = in.getInt();
      in.position(in.position() + skip);
    }
    in.getInt();
    List<short[]> ranks = new ArrayList<>();
    int uses = in.getInt();
    for (int i = 0; i < uses; i++) {
      ranks.add(ranks(in, begins[in.getInt()]));
    }
    return new Seasons(ranks, counted(in, survival));
  }

  private static short[] ranks(ByteBuffer in, int at) {
    short[] out = new short[in.getInt(at)];
    for (int i = 0; i < out.length; i++) {
      out[i] = in.getShort(at + Integer.BYTES + i * Short.BYTES);
    }
    return out;
  }

  private static Counted counted(ByteBuffer in, Survival survival) {
    byte kind = in.get();
    int n = in.getInt();
    if (kind == OVER) {
      double[] living = new double[n];
      boolean[] over = new boolean[n];
      for (int i = 0; i < n; i++) {
        living[i] = in.getDouble();
        over[i] = in.get() == 1;
      }
      return new Counted.Over(living, over);
    }
    LocalDate from = LocalDate.ofEpochDay(in.getLong());
    LocalDate day = LocalDate.ofEpochDay(in.getLong());
    float[] then = new float[n];
    float[] least = new float[n];
    for (int i = 0; i < n; i++) {
      then[i] = in.getFloat();
      least[i] = in.getFloat();
    }
    return Counted.Lost.of(survival, from, day, then, least);
  }
}
