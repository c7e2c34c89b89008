package broodtide.assessment;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** A figure that is worked out when it is first asked for, and kept. Threads may share it. */
final class Lazy<T> {
  private final Supplier<T> work;
  private @Nullable T done;

  Lazy(Supplier<T> work) {
    this.work = work;
  }

  synchronized T get() {
    if (done == null) {
      done = work.get();
    }
    return done;
  }
}
