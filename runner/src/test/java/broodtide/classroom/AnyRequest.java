package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.web.Refused;
import broodtide.web.RequestGuard;
import broodtide.web.Response;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpContext;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpPrincipal;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The readers of the class page, asked without a network between. */
final class AnyRequest {
  private static final int PORT = 8080;

  private final RequestGuard door = new RequestGuard(PORT);
  private final ClassSite room = new ClassSite(Catalog.climate("temperate"));

  /** Requests that are answered, as first lines and further headers. */
  static List<String> samples() {
    return List.of(
        "GET /\nHost: 127.0.0.1:8080",
        "GET /explore?mites=2\nHost: localhost:8080",
        "GET /lessons\nHost: localhost:8080",
        "HEAD /lessons/doubling\nHost: localhost:8080\nContent-Length: 0",
        "GET /api/lessons/one-wash/washes?seed=7\nHost: localhost:8080",
        "GET /lessons/spring-count/worksheet\nHost: localhost:8080",
        "GET /static/page.js\nHost: localhost:8080",
        "GET /api/inside?climate=boreal&mites=2\nHost: localhost:8080",
        "GET /api/season?climate=boreal&mites=0.4&brood=1.05&a=drone-comb-part@2026-05-02"
            + ",thymol@2026-08-20&b=&arrivals=3\nHost: localhost:8080");
  }

  /**
   * Answers bytes as a request, as the server does.
   *
   * @return the status; 0 when no server would hand such a request on
   */
  int answer(byte[] bytes) {
    String[] lines = new String(bytes, StandardCharsets.ISO_8859_1).split("\n", 20);
    String[] first = lines[0].split(" ", 2);
    if (first.length < 2) {
      return 0;
    }
    Headers headers = new Headers();
    URI address;
    try {
      address = new URI(first[1]);
      for (int i = 1; i < lines.length; i++) {
        String[] header = lines[i].split(": ?", 2);
        headers.add(header[0], header.length > 1 ? header[1] : "");
      }
    } catch (URISyntaxException | IllegalArgumentException e) {
      return 0;
    }
    try {
      door.check(new Asked(first[0], address, headers));
      Response answer = room.answer(address);
      assertThat(answer.body()).isNotEmpty();
      return answer.status();
    } catch (Refused e) {
      assertThat(e.reason()).isNotBlank();
      assertThat(e.status()).isBetween(400, 499);
      return e.status();
    }
  }

  /** A request and nothing else: what is read of it is all there is. */
  private static final class Asked extends HttpExchange {
    private final String method;
    private final URI address;
    private final Headers headers;

    Asked(String method, URI address, Headers headers) {
      this.method = method;
      this.address = address;
      this.headers = headers;
    }

    @Override
    public Headers getRequestHeaders() {
      return headers;
    }

    @Override
    public URI getRequestURI() {
      return address;
    }

    @Override
    public String getRequestMethod() {
      return method;
    }

    private static UnsupportedOperationException unused() {
      return new UnsupportedOperationException("only the head of a request is read");
    }

    @Override
    public Headers getResponseHeaders() {
      throw unused();
    }

    @Override
    public HttpContext getHttpContext() {
      throw unused();
    }

    @Override
    public void close() {
      throw unused();
    }

    @Override
    public InputStream getRequestBody() {
      throw unused();
    }

    @Override
    public OutputStream getResponseBody() {
      throw unused();
    }

    @Override
    public void sendResponseHeaders(int code, long length) {
      throw unused();
    }

    @Override
    public InetSocketAddress getRemoteAddress() {
      throw unused();
    }

    @Override
    public int getResponseCode() {
      throw unused();
    }

    @Override
    public InetSocketAddress getLocalAddress() {
      throw unused();
    }

    @Override
    public String getProtocol() {
      throw unused();
    }

    @Override
    public Object getAttribute(String name) {
      throw unused();
    }

    @Override
    public void setAttribute(String name, Object value) {
      throw unused();
    }

    @Override
    public void setStreams(InputStream in, OutputStream out) {
      throw unused();
    }

    @Override
    public HttpPrincipal getPrincipal() {
      throw unused();
    }
  }
}
