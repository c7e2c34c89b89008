package broodtide.browser;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A Chromium of this machine, without a window, spoken to over its own DevTools protocol, so that
 * neither a driver nor a download is needed.
 */
public final class Chromium implements AutoCloseable, WebSocket.Listener {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int PATIENCE = 30;

  private final Process process;
  private final Path profile;
  private final Map<Integer, CompletableFuture<JsonNode>> asked = new ConcurrentHashMap<>();
  private final List<String> complaints = new CopyOnWriteArrayList<>();
  private final AtomicInteger number = new AtomicInteger();
  private final StringBuilder partial = new StringBuilder();
  private final WebSocket socket;
  private final boolean whole;

  private Chromium(Process process, Path profile, URI page, boolean whole) throws Exception {
    this.process = process;
    this.profile = profile;
    this.whole = whole;
    socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(page, this)
            .get(PATIENCE, TimeUnit.SECONDS);
    for (String domain : List.of("Page", "Runtime", "Log")) {
      send(domain + ".enable", JSON.createObjectNode());
    }
  }

  /** Starts it with a profile of its own. */
  public static Chromium start() throws Exception {
    Path profile = Files.createTempDirectory("broodtide-browser");
    List<String> command = new ArrayList<>(InstalledBrowser.command(profile));
    command.addAll(List.of("--remote-debugging-port=0", "about:blank"));
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      Path said = profile.resolve("DevToolsActivePort");
      until(() -> Files.exists(said) && lines(said).size() > 1);
      String port = lines(said).get(0);
      for (JsonNode tab : tabs(port, "/json", "GET")) {
        if (tab.path("type").asText().equals("page")) {
          return new Chromium(process, profile, socket(tab), true);
        }
      }
      throw new IllegalStateException("the browser opened no page");
    } catch (Exception e) {
      process.destroyForcibly();
      throw e;
    }
  }

  /** Opens another tab beside this one; closing it leaves the others open. */
  public Chromium tab() throws Exception {
    String port = lines(profile.resolve("DevToolsActivePort")).get(0);
    return new Chromium(process, profile, socket(tabs(port, "/json/new", "PUT")), false);
  }

  private static JsonNode tabs(String port, String path, String method) throws Exception {
    URI address = URI.create("http://127.0.0.1:" + port + path);
    return JSON.readTree(
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(address)
                    .method(method, HttpRequest.BodyPublishers.noBody())
                    .build(),
                HttpResponse.BodyHandlers.ofString())
            .body());
  }

  private static URI socket(JsonNode tab) {
    return URI.create(tab.path("webSocketDebuggerUrl").asText());
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException e) {
      return List.of();
    }
  }

  private static void until(BooleanSupplier done) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE);
    while (!done.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new IllegalStateException("waited " + PATIENCE + " s in vain");
      }
      Thread.sleep(50);
    }
  }

  @Override
  public @Nullable CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
    partial.append(data);
    if (last) {
      try {
        hear(JSON.readTree(partial.toString()));
      } catch (IOException e) {
        complaints.add("not understood: " + partial);
      }
      partial.setLength(0);
    }
    from.request(1);
    return null;
  }

  private void hear(JsonNode message) {
    CompletableFuture<JsonNode> waiting = asked.remove(message.path("id").asInt());
    String method = message.path("method").asText();
    if (waiting != null) {
      waiting.complete(message);
    } else if (method.equals("Runtime.exceptionThrown") || method.equals("Log.entryAdded")) {
      complaints.add(message.path("params").toString());
    } else if (method.equals("Runtime.consoleAPICalled")) {
      complaints.add(message.path("params").toString());
    }
  }

  private JsonNode send(String method, ObjectNode params) throws Exception {
    int id = number.incrementAndGet();
    CompletableFuture<JsonNode> answer = new CompletableFuture<>();
    asked.put(id, answer);
    ObjectNode message = JSON.createObjectNode().put("id", id).put("method", method);
    message.set("params", params);
    socket.sendText(message.toString(), true).get(PATIENCE, TimeUnit.SECONDS);
    JsonNode heard = answer.get(PATIENCE, TimeUnit.SECONDS);
    if (heard.path("error").path("message").asText().contains("navigated")) {
      throw new Left(method + ": " + heard.path("error"));
    }
    if (heard.has("error")) {
      throw new IllegalStateException(method + ": " + heard.path("error"));
    }
    return heard.path("result");
  }

  /** Everything that the console has said so far. */
  public List<String> complaints() {
    return complaints;
  }

  /** Opens an address in a window of a size. */
  public void open(URI address, int width, int height) throws Exception {
    window(width, height);
    send("Page.navigate", JSON.createObjectNode().put("url", address.toString()));
    waitFor("location.href === '" + address + "' && document.readyState === 'complete'");
  }

  /** Opens an address that the page takes something out of, in a window of a size. */
  public void enter(URI address, int width, int height) throws Exception {
    window(width, height);
    send("Page.navigate", JSON.createObjectNode().put("url", address.toString()));
    waitFor(
        "location.pathname === '" + address.getPath() + "' && document.readyState === 'complete'");
  }

  /** Gives the window a size. */
  public void window(int width, int height) throws Exception {
    send(
        "Emulation.setDeviceMetricsOverride",
        JSON.createObjectNode()
            .put("width", width)
            .put("height", height)
            .put("deviceScaleFactor", 1)
            .put("mobile", width < 500));
  }

  /** What an expression is worth in the page. */
  public JsonNode eval(String expression) throws Exception {
    JsonNode result =
        send(
            "Runtime.evaluate",
            JSON.createObjectNode()
                .put("expression", expression)
                .put("returnByValue", true)
                .put("awaitPromise", true));
    if (result.has("exceptionDetails")) {
      throw new IllegalStateException(expression + ": " + result.path("exceptionDetails"));
    }
    return result.path("result").path("value");
  }

  /** Waits until an expression holds in the page. */
  public void waitFor(String expression) throws Exception {
    waitFor(expression, PATIENCE);
  }

  /** Waits so many seconds until an expression holds in the page. */
  public void waitFor(String expression, int seconds) throws Exception {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    while (!holds(expression)) {
      if (System.nanoTime() > end) {
        throw new IllegalStateException("never came true: " + expression);
      }
      Thread.sleep(30);
    }
  }

  /** Whether an expression holds; nothing does in a page that is just being left. */
  private boolean holds(String expression) throws Exception {
    try {
      return eval("Boolean(" + expression + ")").asBoolean();
    } catch (Left e) {
      return false;
    }
  }

  /** The page was left before it answered. */
  private static final class Left extends IllegalStateException {
    private static final long serialVersionUID = 1L;

    Left(String message) {
      super(message);
    }
  }

  /** Presses a key, for example {@code ArrowRight}, {@code Tab}, {@code Enter}. */
  public void press(String key) throws Exception {
    Map<String, Integer> codes =
        Map.of(
            "ArrowRight",
            39,
            "ArrowLeft",
            37,
            "ArrowDown",
            40,
            "ArrowUp",
            38,
            "Tab",
            9,
            "Enter",
            13,
            " ",
            32,
            "PageDown",
            34,
            "PageUp",
            33,
            "Delete",
            46);
    for (String type : List.of("keyDown", "keyUp")) {
      ObjectNode event =
          JSON.createObjectNode()
              .put("type", type)
              .put("key", key)
              .put("code", key.equals(" ") ? "Space" : key)
              .put("windowsVirtualKeyCode", codes.getOrDefault(key, 0));
      if (type.equals("keyDown") && key.equals("Enter")) {
        event.put("text", "\r");
      } else if (type.equals("keyDown") && key.equals(" ")) {
        event.put("text", " ");
      }
      send("Input.dispatchKeyEvent", event);
    }
  }

  /** Loads the page that is open once more. */
  public void reload() throws Exception {
    eval("window.earlier = true");
    send("Page.reload", JSON.createObjectNode());
    waitFor("!window.earlier && document.readyState === 'complete'");
  }

  /** Shows pages in the few colours of a system's own palette, or no longer. */
  public void forcedColours(boolean forced) throws Exception {
    ObjectNode media = JSON.createObjectNode().put("media", "");
    media
        .putArray("features")
        .addObject()
        .put("name", "forced-colors")
        .put("value", forced ? "active" : "none");
    send("Emulation.setEmulatedMedia", media);
  }

  /** The window as a PNG. */
  public byte[] picture() throws Exception {
    JsonNode taken = send("Page.captureScreenshot", JSON.createObjectNode());
    return Base64.getDecoder().decode(taken.path("data").asText());
  }

  /** Presses Tab until the focus is on an element that a selector names. */
  public void tabTo(String selector) throws Exception {
    for (int i = 0; i < 150; i++) {
      press("Tab");
      if (eval("Boolean(document.activeElement?.matches("
              + JSON.writeValueAsString(selector)
              + "))")
          .asBoolean()) {
        return;
      }
    }
    throw new IllegalStateException("Tab never came to " + selector);
  }

  /** Presses the keys of a text one after the other. */
  public void keys(String text) throws Exception {
    for (char c : text.toCharArray()) {
      send(
          "Input.dispatchKeyEvent",
          JSON.createObjectNode()
              .put("type", "keyDown")
              .put("key", String.valueOf(c))
              .put("text", String.valueOf(c)));
      send(
          "Input.dispatchKeyEvent",
          JSON.createObjectNode().put("type", "keyUp").put("key", String.valueOf(c)));
    }
  }

  /** Types text into what has the focus. */
  public void type(String text) throws Exception {
    send("Input.insertText", JSON.createObjectNode().put("text", text));
  }

  /** Drags the mouse from one place of the window to another. */
  public void drag(double fromX, double fromY, double toX, double toY) throws Exception {
    mouse("mouseMoved", fromX, fromY, 0);
    mouse("mousePressed", fromX, fromY, 1);
    for (int i = 1; i <= 20; i++) {
      mouse("mouseMoved", fromX + (toX - fromX) * i / 20, fromY + (toY - fromY) * i / 20, 1);
    }
    mouse("mouseReleased", toX, toY, 0);
  }

  private void mouse(String type, double x, double y, int buttons) throws Exception {
    send(
        "Input.dispatchMouseEvent",
        JSON.createObjectNode()
            .put("type", type)
            .put("x", x)
            .put("y", y)
            .put("button", "left")
            .put("buttons", buttons)
            .put("clickCount", 1));
  }

  /** The page as a printer would get it, on paper of a size in inches. */
  public byte[] pdf(double width, double height) throws Exception {
    JsonNode printed =
        send(
            "Page.printToPDF",
            JSON.createObjectNode()
                .put("printBackground", true)
                .put("paperWidth", width)
                .put("paperHeight", height));
    return Base64.getDecoder().decode(printed.path("data").asText());
  }

  @Override
  public void close() {
    if (!whole) {
      closeTab();
      return;
    }
    socket.abort();
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
    try {
      process.waitFor(PATIENCE, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    remove(profile);
  }

  private void closeTab() {
    try {
      send("Page.close", JSON.createObjectNode());
    } catch (Exception e) {
      throw new IllegalStateException("the tab does not close", e);
    }
    socket.abort();
  }

  /** Removes what can be removed; helpers of the browser may still be letting go of a file. */
  private static void remove(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      all.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
    } catch (IOException | UncheckedIOException e) {
      folder.toFile().deleteOnExit();
    }
  }
}
