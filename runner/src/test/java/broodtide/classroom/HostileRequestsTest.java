package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.web.Query;
import broodtide.web.Refused;
import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is sent, a clean refusal comes back, and the page goes on. */
class HostileRequestsTest {
  private static OpenPage page;

  @BeforeAll
  static void open() throws IOException {
    page = new OpenPage();
  }

  @AfterAll
  static void close() {
    page.close();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mites=11 | mites is \\\"11\\\"; expected 0 to 10 (mites per 100 bees)",
        "mites=-1 |expected 0 to 10",
        "mites=NaN |expected a number, 0 to 10",
        "mites=1e1 |expected a number",
        "mites= |expected a number",
        "mites=1&mites=2 | mites is given twice",
        "brood=0.4 |expected 0.5 to 1.5",
        "arrivals=1000 |expected 0 to 40",
        "climate=mars | one of boreal, cold-continental",
        "climate=../studies/larkmeadow.json | one of boreal",
        "a=comb | a is \\\"comb\\\"; expected control@date, such as thymol@2026-08-15",
        "a=thymol@2026-02-30 | expected a date from 2026-03-01 to 2027-03-31",
        "b=thymol@2020-01-01 | b is \\\"2020-01-01\\\"; expected a date from 2026-03-01",
        "a=thymol@+2026-08-1 | expected a date from",
        "a=thymol@2026-08-01, | expected control@date",
        "south=maybe | one of yes, no",
        "add=tymol | add is",
        "a=thymol@2026-08-15&add=thymol&on=2020-01-01 | a date like",
        "drop=table | there is no value named \\\"drop\\\"; expected climate",
        "mites |expected name=value",
        "=1 |expected name=value",
        "mites=%00 |expected a number",
        "mites=<script> |expected a number"
      })
  void rangesAreNamed(String query, String message) throws Exception {
    String answer = get("/api/season?" + query.replace("<", "%3C").replace(">", "%3E"));
    assertThat(answer)
        .startsWith("HTTP/1.1 400")
        .contains("application/json", "{\"error\":", message);
    clean(answer);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/static/../pages/frame.html",
        "/static/%2e%2e/pages/frame.html",
        "/static/..%2fpages%2fframe.html",
        "/static//etc/passwd",
        "/static/",
        "/static/page.js.map",
        "/static/..\\pages\\frame.html",
        "/../../../../etc/passwd",
        "/lessons/../lessons",
        "/lessons/nothing",
        "/lessons/spring-count/",
        "/lessons/spring-count/washes",
        "/lessons/spring-count/answers",
        "/api/lessons/spring-count/washes",
        "/api/lessons/spring-count/worksheet",
        "/api",
        "/api/",
        "//",
        "/index.html",
        "/favicon.ico",
        "/LESSONS",
        "/lessons;x=1"
      })
  void otherAddressesAreNotFound(String path) throws IOException {
    String answer = get(path);
    assertThat(answer).matches("(?s)HTTP/1.1 40[04] .*");
    clean(answer);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "seed=-1",
        "seed=1000000",
        "seed=1.5",
        "seed=99999999999999999999",
        "seed=",
        "sead=1"
      })
  void seedsAreChecked(String query) throws Exception {
    String answer = get("/api/lessons/one-wash/washes?" + query);
    assertThat(answer).startsWith("HTTP/1.1 400");
    clean(answer);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/?a=1",
        "/explore?a=1",
        "/lessons?a=1",
        "/lessons/doubling?a=1",
        "/api/lessons/doubling?a"
      })
  void pagesTakeNoValues(String path) throws IOException {
    assertThat(get(path)).startsWith("HTTP/1.1 400");
  }

  /** A hostile page can point a name of its own at 127.0.0.1; the browser then says that name. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "evil.example",
        "evil.example:PORT",
        "127.0.0.1",
        "localhost",
        "localhost:1",
        "127.0.0.1:PORT.evil.example",
        "127.0.0.2:PORT",
        "[::1]:PORT",
        ""
      })
  void otherHostsAreRefused(String host) throws IOException {
    String named = host.replace("PORT", Integer.toString(page.port()));
    String answer =
        page.raw("GET /api/season HTTP/1.1\r\nHost: " + named + "\r\nConnection: close\r\n\r\n");
    assertThat(answer).startsWith("HTTP/1.1 403").contains("answers only at http://127.0.0.1:");
    clean(answer);
  }

  @Test
  void noHostTwoHostsAndWholeAddressesAreRefused() throws IOException {
    String right = "Host: 127.0.0.1:" + page.port() + "\r\n";
    String end = "Connection: close\r\n\r\n";
    assertThat(page.raw("GET / HTTP/1.1\r\n" + end)).startsWith("HTTP/1.1 403");
    assertThat(page.raw("GET / HTTP/1.0\r\n\r\n")).startsWith("HTTP/1.1 403");
    assertThat(page.raw("GET / HTTP/1.1\r\n" + right + "Host: evil.example\r\n" + end))
        .startsWith("HTTP/1.1 403");
    assertThat(page.raw("GET http://evil.example/ HTTP/1.1\r\n" + right + end))
        .startsWith("HTTP/1.1 403");
    assertThat(page.raw("GET / HTTP/1.1\r\n" + right + end)).startsWith("HTTP/1.1 200");
    assertThat(page.raw("GET / HTTP/1.1\r\nHost: LOCALHOST:" + page.port() + "\r\n" + end))
        .startsWith("HTTP/1.1 200");
  }

  @ParameterizedTest
  @ValueSource(strings = {"POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "BREW"})
  void otherMethodsAreRefused(String method) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(page.address().resolve("/api/season"))
            .method(method, HttpRequest.BodyPublishers.ofString("{\"mites\": "))
            .build();
    HttpResponse<String> response = page.send(request);
    assertThat(response.statusCode()).isEqualTo(405);
    assertThat(response.headers().firstValue("Allow")).contains("GET, HEAD");
    assertThat(response.body()).contains("expected GET and HEAD");
  }

  @Test
  void bodiesAreRefusedHoweverLarge() throws IOException {
    String head = "GET /api/season HTTP/1.1\r\nHost: 127.0.0.1:" + page.port() + "\r\n";
    assertThat(page.raw(head + "Content-Length: 3\r\nConnection: close\r\n\r\nabc"))
        .startsWith("HTTP/1.1 413");
    assertThat(page.raw(head + "Content-Length: 99999999999\r\nConnection: close\r\n\r\nabc"))
        .startsWith("HTTP/1.1 413");
    assertThat(
            page.raw(
                head
                    + "Transfer-Encoding: chunked\r\n"
                    + "Connection: close\r\n\r\n"
                    + "3\r\n"
                    + "abc\r\n"
                    + "0\r\n\r\n"))
        .startsWith("HTTP/1.1 413");
    clean(page.raw(head + "Content-Length: many\r\nConnection: close\r\n\r\n"));
  }

  @Test
  void longAddressesAreRefused() throws IOException {
    assertThat(get("/api/season?mites=" + "1".repeat(3000)))
        .startsWith("HTTP/1.1 414")
        .contains("2048 characters");
    assertThat(get("/" + "a".repeat(100_000))).startsWith("HTTP/1.1 4");
    assertThat(get("/api/season?" + "mites=1&".repeat(100))).startsWith("HTTP/1.1 400");
  }

  /** Nonsense of every kind, the same each time. */
  @Test
  void garbageNeverHurts() throws IOException {
    SplittableRandom random = new SplittableRandom(20_260_815);
    String[] starts = {
      "", "GET ", "GET / HTTP/1.1\r\n", "GET /api/season?", "GET /lessons/", "GET /static/"
    };
    for (int i = 0; i < 200; i++) {
      StringBuilder request = new StringBuilder(starts[i % starts.length]);
      int length = random.nextInt(300);
      for (int k = 0; k < length; k++) {
        request.append((char) random.nextInt(256));
      }
      String host = "Host: 127.0.0.1:" + page.port() + "\r\nConnection: close\r\n\r\n";
      String answer = attempt(request + " HTTP/1.1\r\n" + host);
      assertThat(answer).as("request %d", i).matches("(?s)(HTTP/1.1 (200|4\\d\\d) .*)?");
      clean(answer);
    }
    assertThat(get("/")).startsWith("HTTP/1.1 200");
    assertThat(page.troubles()).isEmpty();
  }

  private static String attempt(String request) {
    try {
      return page.raw(request);
    } catch (IOException e) {
      return ""; // the server may cut off what is no request at all
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"mites=%zz", "mites=%", "%=1", "mites=%e", "&", "a&b", "=", "mites=1&"})
  void valuesThatAreNotWellFormedAreRefused(String query) {
    assertThatThrownBy(() -> Query.of(query, List.of("mites")))
        .isInstanceOf(Refused.class)
        .hasMessageMatching("(?s).*(expected|not well formed).*");
  }

  /** Random values for known names: played or refused, never an error. */
  @Test
  void randomValuesArePlayedOrRefused() throws Exception {
    SplittableRandom random = new SplittableRandom(7);
    String[] names = {"climate", "mites", "brood", "a", "b", "south", "add", "on", "arrivals"};
    String[] values = {
      "0",
      "1",
      "0.5",
      "-0",
      "10",
      "1.5",
      "none",
      "all",
      "boreal",
      "temperate",
      "thymol",
      "queen-caging",
      "requeening",
      "split",
      "2026-08-31",
      "thymol@2026-08-15",
      "queen-caging@2026-07-01,split@2026-05-01",
      "yes",
      "2027-02-28",
      "2026-04-01",
      "%F0%9F%90",
      "1e400",
      "null",
      "[]",
      "{}",
      "2026-13-01",
      "0000000000",
      "9".repeat(40)
    };
    int played = 0;
    for (int i = 0; i < 400; i++) {
      StringBuilder query = new StringBuilder("/api/season?");
      for (int k = random.nextInt(4); k >= 0; k--) {
        query.append(names[random.nextInt(names.length)]).append('=');
        query.append(values[random.nextInt(values.length)]).append(k > 0 ? "&" : "");
      }
      String answer =
          get(
              query
                  .toString()
                  .replace("[", "%5B")
                  .replace("]", "%5D")
                  .replace("{", "%7B")
                  .replace("}", "%7D"));
      assertThat(answer).as(query.toString()).matches("(?s)HTTP/1.1 (200|400) .*");
      clean(answer);
      played += answer.startsWith("HTTP/1.1 200") ? 1 : 0;
    }
    assertThat(played).isBetween(10, 390);
    assertThat(page.troubles()).isEmpty();
  }

  /** Requests that never end hold every thread; after a few seconds others are served again. */
  @Test
  void dawdlersAreCutOff() throws Exception {
    List<Socket> dawdlers = new ArrayList<>();
    try {
      for (int i = 0; i < 20; i++) {
        Socket socket = page.connect();
        socket.getOutputStream().write("GET / HT".getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        dawdlers.add(socket);
      }
      HttpRequest request =
          HttpRequest.newBuilder(page.address()).timeout(Duration.ofSeconds(40)).build();
      assertThat(page.send(request).statusCode()).isEqualTo(200);
    } finally {
      for (Socket socket : dawdlers) {
        socket.close();
      }
    }
  }

  /** Far fewer seconds than a dawdler is given, so nobody had to be cut off first. */
  @Test
  void halfOpenConnectionsStarveNobody() throws Exception {
    List<Socket> halfOpen = new ArrayList<>();
    try {
      for (int i = 0; i < 200; i++) {
        Socket socket = page.connect();
        halfOpen.add(socket);
        if (i % 4 > 0) {
          socket
              .getOutputStream()
              .write(
                  "GET / HTTP/1.1\r\nHo"
                      .substring(0, 3 * (i % 4))
                      .getBytes(StandardCharsets.UTF_8));
          socket.getOutputStream().flush();
        }
      }
      HttpRequest request =
          HttpRequest.newBuilder(page.address()).timeout(Duration.ofSeconds(3)).build();
      assertThat(page.send(request).statusCode()).isEqualTo(200);
    } finally {
      for (Socket socket : halfOpen) {
        socket.close();
      }
    }
  }

  /**
   * What is no HTTP the JDK's server refuses by itself, without the page's headers. Its answer is a
   * line of fixed words that holds nothing of what was sent, and it closes the connection.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>\r\n\r\n",
        "GET\r\n\r\n",
        "GET <script>alert(1)</script>\r\n\r\n",
        "GET /<script>alert(1)</script> HTTP/1.1\r\nHost: x\r\n\r\n",
        "GET / HTTP/1.1\r\nContent-Length: <script>alert(1)</script>\r\n\r\n",
        "GET / HTTP/1.1\r\nTransfer-Encoding: <script>alert(1)</script>\r\n\r\n",
        "GET / HTTP/1.1\r\n<script>alert(1)</script>: x\r\n\r\n",
        "GET / HTTP/1.1\r\n: x\r\n\r\n"
      })
  void refusalsByTheServerItselfEchoNothing(String request) throws IOException {
    String answer = attempt(request);
    assertThat(answer)
        .matches("(?s)(HTTP/1.1 (4\\d\\d|501) .*)?")
        .doesNotContain("script", "alert", "\tat ", "broodtide.");
    if (!answer.isEmpty() && !answer.contains("X-Content-Type-Options")) {
      String body = answer.substring(answer.indexOf("\r\n\r\n") + 4);
      assertThat(answer).containsIgnoringCase("Connection: close");
      assertThat(body).matches("<h1>\\d{3} [A-Za-z ]+</h1>[A-Za-z :.-]*");
    }
  }

  private static String get(String path) throws IOException {
    return page.raw(
        "GET "
            + path
            + " HTTP/1.1\r\nHost: 127.0.0.1:"
            + page.port()
            + "\r\nConnection: close\r\n\r\n");
  }

  /**
   * Nothing of the program's inside, and nothing of a request that could run in a page. What is no
   * HTTP at all the JDK's server refuses by itself, in one line.
   */
  private static void clean(String answer) {
    assertThat(answer).doesNotContain("\tat ", "broodtide.", "java.", "<script>alert");
    if (!answer.contains("<h1>400 Bad Request</h1>")) {
      assertThat(answer).doesNotContain("Exception");
    }
  }
}
