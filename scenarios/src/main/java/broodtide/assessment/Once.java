package broodtide.assessment;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** A figure that is worked out when it is first asked for, and kept; for one thread. */
final class Once<T> {
  private final Supplier<T> work;
  private @Nullable T done;

  Once(Supplier<T> work) {
    this.work = work;
  }

  T get() {
    if (done == null) {
      done = work.get();
    }
    return done;
  }
}
