package broodtide.classroom;

import broodtide.catalog.Catalog;
import broodtide.web.LocalServer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A running class page and ways to ask it, well-behaved and otherwise. */
public final class OpenPage implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final List<Throwable> troubles = new CopyOnWriteArrayList<>();
  private final HttpClient client = HttpClient.newHttpClient();
  private final LocalServer server;

  public OpenPage() throws IOException {
    server = LocalServer.open(0, new ClassSite(Catalog.climate("temperate")), troubles::add);
  }

  public URI address() {
    return server.address();
  }

  public int port() {
    return address().getPort();
  }

  /** Errors inside the program so far. */
  public List<Throwable> troubles() {
    return troubles;
  }

  public HttpResponse<String> get(String path) throws Exception {
    return send(HttpRequest.newBuilder(address().resolve(path)).build());
  }

  public JsonNode json(String path) throws Exception {
    HttpResponse<String> response = get(path);
    if (response.statusCode() != 200) {
      throw new IllegalStateException(path + ": " + response.statusCode() + response.body());
    }
    return JSON.readTree(response.body());
  }

  HttpResponse<String> send(HttpRequest request) throws Exception {
    return client.send(request, HttpResponse.BodyHandlers.ofString());
  }

  /** Sends bytes as they are and returns the whole answer. */
  public String raw(String request) throws IOException {
    try (Socket socket = connect()) {
      socket.setSoTimeout(20_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      socket.shutdownOutput();
      InputStream in = socket.getInputStream();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  Socket connect() throws IOException {
    return new Socket(InetAddress.getByName("127.0.0.1"), port());
  }

  @Override
  public void close() {
    server.close();
  }
}
