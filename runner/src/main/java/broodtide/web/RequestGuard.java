package broodtide.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.net.URI;
import java.util.List;
import java.util.Locale;

/**
 * Looks at every request before anything is done for it. The page is for this machine alone: a
 * request that reached it under another name, as a hostile page in the same browser could arrange,
 * is turned away.
 */
public final class RequestGuard {
  private static final int LONGEST_ADDRESS = 2048;

  private final List<String> hosts;

  /**
   * @param port the port that the page answers on
   */
  public RequestGuard(int port) {
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
    if (!List.of("GET", "HEAD").contains(exchange.getRequestMethod())) {
      throw new Refused(405, "expected GET and HEAD; the page takes nothing else");
    }
    List<String> length = headers.getOrDefault("Content-Length", List.of("0"));
    if (!length.equals(List.of("0")) || headers.containsKey("Transfer-Encoding")) {
      throw new Refused(413, "send nothing with the request; all that is asked is in the address");
    }
    String path = address.getRawPath();
    if (path == null || !path.matches("/[a-z0-9./-]*") || path.contains("..")) {
      throw Refused.unknown("there is no page at this address");
    }
  }
}
