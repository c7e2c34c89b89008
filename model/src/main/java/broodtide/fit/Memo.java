package broodtide.fit;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What was worked out last, by what was asked. Threads that ask the same at once may both work it
 * out, and find the same.
 */
final class Memo<K, V> {
  private static final int MOST = 16;

  private final Map<K, V> known = new LinkedHashMap<>(16, 0.75f, true);

  /** What is known of a question, or else what the work finds. */
  V get(K asked, Supplier<V> work) {
    synchronized (known) {
      V before = known.get(asked);
      if (before != null) {
        return before;
      }
    }
    V found = work.get();
    synchronized (known) {
      known.put(asked, found);
      if (known.size() > MOST) {
        known.remove(known.keySet().iterator().next());
      }
    }
    return found;
  }
}
