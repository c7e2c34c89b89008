package broodtide.page;

import broodtide.catalog.Catalog;
import broodtide.classroom.ClassSite;
import broodtide.web.LocalServer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/** The page for one's own hives, running over a folder, on a fixed day. */
public final class OpenHives implements AutoCloseable {
  static final Clock DAY = Clock.fixed(Instant.parse("2026-08-02T08:00:00Z"), ZoneOffset.UTC);
  static final ObjectMapper JSON = new ObjectMapper();

  /** Fewer than a user has: what these tests ask does not hang on the figures. */
  private static final int COLONIES = 256;

  private final List<Throwable> troubles = new CopyOnWriteArrayList<>();
  private final HttpClient client = HttpClient.newHttpClient();
  private final String token = HivesSite.token();
  private final HivesSite site;
  private final LocalServer server;

  public OpenHives(Path folder) throws IOException {
    this(folder, 0);
  }

  /** At a port of one's own, as the next start for the same folder is. */
  OpenHives(Path folder, int port) throws IOException {
    site =
        new HivesSite(
            new ClassSite(Catalog.climate("temperate")),
            folder,
            new ApiaryWork("test", COLONIES),
            DAY,
            troubles::add);
    server = LocalServer.open(port, site, Optional.of(token), troubles::add);
  }

  URI address() {
    return server.address();
  }

  /** The address that the command prints. */
  URI start(String path) {
    return server.address().resolve(path + "#start=" + token);
  }

  List<Throwable> troubles() {
    return troubles;
  }

  String token() {
    return token;
  }

  HttpResponse<String> send(HttpRequest request) throws Exception {
    return client.send(request, HttpResponse.BodyHandlers.ofString());
  }

  /** A request as the page makes it. */
  HttpRequest.Builder request(String what, String body) {
    String self = address().toString();
    return HttpRequest.newBuilder(address().resolve("/api/hives/" + what))
        .header("Content-Type", "application/json")
        .header("Origin", self.substring(0, self.length() - 1))
        .header("X-Broodtide-Token", token)
        .POST(HttpRequest.BodyPublishers.ofString(body));
  }

  HttpResponse<String> post(String what, JsonNode body) throws Exception {
    return send(request(what, body.toString()).build());
  }

  /** What is answered to something that is allowed. */
  public JsonNode asked(String what, JsonNode body) throws Exception {
    HttpResponse<String> answer = post(what, body);
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(what + ": " + answer.statusCode() + " " + answer.body());
    }
    return JSON.readTree(answer.body());
  }

  /** Works something out and waits for it. */
  JsonNode worked(ObjectNode body) throws Exception {
    JsonNode state = asked("work", body.put("page", "test"));
    while (List.of("waiting", "working").contains(state.path("state").asText())) {
      Thread.sleep(30);
      state = asked("job", JSON.createObjectNode().put("page", "test"));
    }
    return state;
  }

  public static ObjectNode object() {
    return JSON.createObjectNode();
  }

  @Override
  public void close() {
    server.close();
    site.close();
  }
}
