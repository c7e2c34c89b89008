package broodtide.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Looks at every request before anything is done for it. The page is for this machine alone: a
 * request that reached it under another name, as a hostile page in the same browser could arrange,
 * is turned away.
 *
 * <p>What is sent changes the user's files, so more is asked of it: it comes from a page of this
 * server, as the browser says in {@code Origin}, it is JSON of a bounded size, and it carries the
 * token that the program gave to whoever started it.
 */
public final class RequestGuard {
  private static final int LONGEST_ADDRESS = 2048;

  /** Most bytes that may be sent. */
  static final int LARGEST = 1_000_000;

  /** The header that carries the token. */
  static final String TOKEN = "X-Broodtide-Token";

  private final List<String> hosts;
  private final Optional<String> token;

  /**
   * @param port the port that the page answers on
   */
  public RequestGuard(int port) {
    this(port, Optional.empty());
  }

  /**
   * @param port the port that the page answers on
   * @param token what whoever sends must know; empty where nothing is taken
   */
  public RequestGuard(int port, Optional<String> token) {
    this.token = token;
    hosts = List.of("127.0.0.1:" + port, "localhost:" + port);
  }

  /**
   * Checks a request.
   *
   * @throws Refused when it is not one that the page answers
   */
  public void check(HttpExchange exchange) {
    URI address = exchange.getRequestURI();
    if (address.toString().length() > LONGEST_ADDRESS) {
      throw new Refused(
          414, "the address is longer than " + LONGEST_ADDRESS + " characters; shorten it");
    }
    Headers headers = exchange.getRequestHeaders();
    List<String> host = headers.getOrDefault("Host", List.of());
    if (address.isAbsolute()
        || host.size() != 1
        || !hosts.contains(host.get(0).toLowerCase(Locale.ROOT))) {
      throw new Refused(403, "this page answers only at http://" + hosts.get(0) + "/");
    }
    if (token.isPresent() && exchange.getRequestMethod().equals("POST")) {
      sent(headers, token.get());
    } else {
      asked(exchange, headers);
    }
    String path = address.getRawPath();
    if (path == null || !path.matches("/[a-z0-9./-]*") || path.contains("..")) {
      throw Refused.unknown("there is no page at this address");
    }
  }

  /** {@return the methods that are allowed, as a header names them} */
  String methods() {
    return token.isPresent() ? "GET, HEAD, POST" : "GET, HEAD";
  }

  private void asked(HttpExchange exchange, Headers headers) {
    if (!List.of("GET", "HEAD").contains(exchange.getRequestMethod())) {
      throw new Refused(
          405,
          token.isPresent()
              ? "expected GET, HEAD and POST; the page takes nothing else"
              : "expected GET and HEAD; the page takes nothing else");
    }
    List<String> length = headers.getOrDefault("Content-Length", List.of("0"));
    if (!length.equals(List.of("0")) || headers.containsKey("Transfer-Encoding")) {
      throw new Refused(413, "send nothing with the request; all that is asked is in the address");
    }
  }

  private void sent(Headers headers, String wanted) {
    List<String> origin = headers.getOrDefault("Origin", List.of());
    if (origin.size() != 1
        || hosts.stream().noneMatch(h -> ("http://" + h).equals(origin.get(0)))) {
      throw new Refused(403, "this page takes what is sent from its own pages alone");
    }
    List<String> known = headers.getOrDefault(TOKEN, List.of());
    if (known.size() != 1 || !same(known.get(0), wanted)) {
      throw new Refused(
          403, "the token is missing or old; open the address that the program printed");
    }
    List<String> type = headers.getOrDefault("Content-Type", List.of());
    if (type.size() != 1 || !type.get(0).equals("application/json")) {
      throw new Refused(415, "expected application/json");
    }
    List<String> length = headers.getOrDefault("Content-Length", List.of());
    if (headers.containsKey("Transfer-Encoding")
        || length.size() != 1
        || !length.get(0).matches("[0-9]{1,15}")) {
      throw new Refused(411, "say how much is sent, in Content-Length");
    }
    if (Long.parseLong(length.get(0)) > LARGEST) {
      throw new Refused(
          413,
          "this is more than 1 MB; save a larger table as washes.csv in the folder, and load it"
              + " from there");
    }
  }

  private static boolean same(String given, String wanted) {
    return MessageDigest.isEqual(
        given.getBytes(StandardCharsets.UTF_8), wanted.getBytes(StandardCharsets.UTF_8));
  }
}
