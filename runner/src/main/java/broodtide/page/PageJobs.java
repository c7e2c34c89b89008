package broodtide.page;

import broodtide.engine.Progress;
import broodtide.measure.RefusedException;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Work for open pages, one piece after the other. A page has one piece at a time: what it asks next
 * stops what it asked before.
 */
final class PageJobs implements AutoCloseable {
  private static final int REMEMBERED = 16;

  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread t = new Thread(work, "page-work");
            t.setDaemon(true);
            return t;
          });
  private final Map<String, Job> jobs =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Job> eldest) {
          if (size() > REMEMBERED) {
            eldest.getValue().stop();
            return true;
          }
          return false;
        }
      };
  private final Consumer<Throwable> trouble;
  private long number;

  /**
   * @param trouble is told of faults of the program
   */
  PageJobs(Consumer<Throwable> trouble) {
    this.trouble = trouble;
  }

  /** A piece of work. */
  @FunctionalInterface
  interface Work {
    /** {@return the answer} */
    ObjectNode done(Step step);
  }

  /** Is told what is being done, and how far that is. */
  interface Step {
    /**
     * Begins a step.
     *
     * @param what what is done, in a few words
     * @param part number of the part, from 0
     * @param parts parts in all
     * @return is told how far the part is
     */
    Progress begin(String what, int part, int parts);
  }

  /** One piece of work. */
  private static final class Job implements Step {
    private final long number;
    private @Nullable Future<?> future;
    private String state = "waiting";
    private String what = "";
    private double share;
    private @Nullable ObjectNode answer;
    private String message = "";

    Job(long number) {
      this.number = number;
    }

    @Override
    public synchronized Progress begin(String doing, int part, int parts) {
      if (Thread.currentThread().isInterrupted()) {
        throw new CancellationException("stopped");
      }
      what = doing;
      at((double) part / parts);
      return (done, all) -> at((part + (double) done / Math.max(1, all)) / parts);
    }

    private synchronized void at(double now) {
      share = now;
    }

    synchronized void be(String next, String why) {
      if (state.equals("stopped")) {
        return;
      }
      state = next;
      message = why;
    }

    synchronized void answer(ObjectNode found) {
      if (state.equals("stopped")) {
        return;
      }
      answer = found;
      state = "done";
    }

    synchronized void begun(Future<?> running) {
      future = running;
    }

    synchronized void stop() {
      if (state.equals("waiting") || state.equals("working")) {
        state = "stopped";
      }
      if (future != null) {
        future.cancel(true);
      }
    }

    synchronized boolean starts() {
      if (state.equals("stopped")) {
        return false;
      }
      state = "working";
      return true;
    }

    synchronized ObjectNode json() {
      ObjectNode out = JsonNodeFactory.instance.objectNode();
      out.put("job", number).put("state", state).put("what", what);
      out.put("percent", (int) Math.min(100, Math.max(0, Math.floor(100 * share))));
      if (!message.isEmpty()) {
        out.put("message", message);
      }
      if (answer != null) {
        out.set("answer", answer);
      }
      return out;
    }
  }

  /**
   * Begins a piece of work, and stops what the page asked before.
   *
   * @param page tells open pages apart
   * @return how the work stands
   */
  synchronized ObjectNode begin(String page, Work work) {
    cancel(page);
    Job job = new Job(++number);
    jobs.put(page, job);
    job.begun(thread.submit(() -> run(job, work)));
    return job.json();
  }

  /** Stops the work of a page. */
  synchronized void cancel(String page) {
    Job job = jobs.get(page);
    if (job != null) {
      job.stop();
    }
  }

  /** {@return how the work of a page stands; state {@code none} where there is none} */
  synchronized ObjectNode look(String page) {
    Job job = jobs.get(page);
    return job == null
        ? JsonNodeFactory.instance.objectNode().put("job", 0).put("state", "none")
        : job.json();
  }

  private void run(Job job, Work work) {
    if (!job.starts()) {
      return;
    }
    try {
      job.answer(work.done(job));
    } catch (CancellationException e) {
      job.be("stopped", "");
    } catch (RefusedException e) {
      job.be("refused", e.reason());
    } catch (OutOfMemoryError e) {
      job.be(
          "refused",
          "the memory ran out; close other programs, or give Java more with"
              + " JAVA_TOOL_OPTIONS=-Xmx4g");
    } catch (RuntimeException | StackOverflowError | LinkageError | AssertionError e) {
      job.be("fault", "something went wrong inside the program");
      trouble.accept(e);
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
