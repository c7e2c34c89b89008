package broodtide.web;

import broodtide.measure.RefusedException;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Semaphore;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Serves pages to this machine. Bound to 127.0.0.1, so that no other machine can reach it.
 *
 * <p>The JDK's server gives a thread to every request that has begun to arrive, and holds it until
 * the request is whole. So there are many threads, of which most may wait for requests that dawdle,
 * and few of them may work at a time; what dawdles is cut off after some seconds.
 *
 * <p>What is no HTTP at all the JDK's server refuses before anybody is asked: in one line of fixed
 * words, with nothing in it of what was sent, and the connection is closed. Such an answer has none
 * of the headers below, and nothing that they could protect.
 */
public final class LocalServer implements AutoCloseable {
  /** Requests that may be under way, most of them waiting for the rest to arrive. */
  private static final int REQUESTS = 512;

  /** Requests that are answered at a time. */
  private static final int AT_WORK = 8;

  private static final byte[] LOOPBACK = {127, 0, 0, 1};

  /** Seconds that a request may take to arrive; a browser on the same machine needs none. */
  private static final String ARRIVING = "5";

  /** Seconds that an answer may take to be fetched. */
  private static final String FETCHING = "20";

  private final HttpServer server;
  private final ExecutorService threads;
  private final RequestGuard door;
  private final Site site;
  private final Semaphore work = new Semaphore(AT_WORK);
  private final Consumer<Throwable> trouble;

  private LocalServer(
      HttpServer server,
      ExecutorService threads,
      Site site,
      Optional<String> token,
      Consumer<Throwable> trouble) {
    this.server = server;
    this.threads = threads;
    this.door = new RequestGuard(server.getAddress().getPort(), token);
    this.site = site;
    this.trouble = trouble;
  }

  /**
   * Opens the page.
   *
   * @param port port, 0 for any that is free
   * @param site what it serves
   * @param trouble is told of errors inside the program, which clients learn nothing of
   * @return the open page; close it to stop
   * @throws IOException when the port cannot be had
   */
  public static LocalServer open(int port, Site site, Consumer<Throwable> trouble)
      throws IOException {
    return open(port, site, Optional.empty(), trouble);
  }

  /**
   * Opens pages that may send as well.
   *
   * @param port port, 0 for any that is free
   * @param site what it serves
   * @param token what whoever sends must know; empty where nothing is ever sent
   * @param trouble is told of errors inside the program, which clients learn nothing of
   * @return the open page; close it to stop
   * @throws IOException when the port cannot be had
   */
  public static LocalServer open(
      int port, Site site, Optional<String> token, Consumer<Throwable> trouble) throws IOException {
    // The JDK's server takes its time limits from the system's properties alone, when it loads.
    limit("sun.net.httpserver.maxReqTime", ARRIVING);
    limit("sun.net.httpserver.maxRspTime", FETCHING);
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getByAddress(LOOPBACK), port), 0);
    ExecutorService threads =
        new ThreadPoolExecutor(
            AT_WORK,
            REQUESTS,
            10,
            TimeUnit.SECONDS,
            new SynchronousQueue<>(),
            LocalServer::helper,
            new ThreadPoolExecutor.CallerRunsPolicy());
    LocalServer page = new LocalServer(server, threads, site, token, trouble);
    server.setExecutor(threads);
    server.createContext("/", page::handle);
    server.start();
    threads.execute(site::warm);
    return page;
  }

  private static void limit(String property, String seconds) {
    if (System.getProperty(property) == null) {
      System.setProperty(property, seconds);
    }
  }

  private static Thread helper(Runnable work) {
    Thread thread = new Thread(work, "local-page");
    thread.setDaemon(true);
    return thread;
  }

  /** {@return where the page is} */
  public URI address() {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/");
  }

  /** Closes the page at once. */
  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }

  private void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      send(exchange, answer(exchange));
    }
  }

  private Response answer(HttpExchange exchange) {
    try {
      door.check(exchange);
      work.acquireUninterruptibly();
      try {
        return exchange.getRequestMethod().equals("POST")
            ? site.post(exchange.getRequestURI(), RequestBody.read(exchange))
            : site.answer(exchange.getRequestURI());
      } finally {
        work.release();
      }
    } catch (Refused e) {
      if (e.status() == 405) {
        exchange.getResponseHeaders().set("Allow", door.methods());
      }
      if (e.status() == 413 && exchange.getRequestMethod().equals("POST")) {
        RequestBody.passOver(exchange);
      }
      return site.refusal(exchange.getRequestURI(), e.status(), e.reason());
    } catch (RefusedException e) {
      return site.refusal(exchange.getRequestURI(), 422, e.reason());
    } catch (RuntimeException | StackOverflowError e) {
      trouble.accept(e);
      return site.refusal(exchange.getRequestURI(), 500, "something went wrong inside the program");
    }
  }

  private static void send(HttpExchange exchange, Response answer) throws IOException {
    Headers headers = exchange.getResponseHeaders();
    headers.set("Content-Type", answer.type());
    headers.set("Cache-Control", "no-store");
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("Referrer-Policy", "no-referrer");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    headers.set(
        "Content-Security-Policy",
        "default-src 'self';"
            + (answer.inlineStyle() ? " style-src 'unsafe-inline';" : "")
            + " object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'");
    boolean head = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(answer.status(), head ? -1 : answer.body().length);
    if (!head) {
      exchange.getResponseBody().write(answer.body());
    }
  }
}
