package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.ClimateFile;
import broodtide.terminal.Terminal;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class ClassCommandTest {
  @Test
  void saysWhereThePageIsAndServesItUntilStopped() throws Exception {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandContext desk =
        new CommandContext(
            InputStream.nullInputStream(),
            new PrintWriter(out),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            Clock.systemUTC());
    Thread running = new Thread(() -> Main.run(desk, "class", "--climate", "boreal"), "page");
    running.start();
    Matcher address = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/").matcher("");
    while (!address.reset(out.toString()).find()) {
      assertThat(running.isAlive()).as(err.toString()).isTrue();
      Thread.sleep(20);
    }
    URI page = URI.create(address.group());
    HttpURLConnection open = (HttpURLConnection) page.resolve("/explore").toURL().openConnection();
    assertThat(open.getResponseCode()).isEqualTo(200);
    assertThat(new String(open.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
        .contains("<option value=\"boreal\" selected>");
    running.interrupt();
    running.join();
    try (ServerSocket free =
        new ServerSocket(page.getPort(), 1, InetAddress.getByName("127.0.0.1"))) {
      assertThat(free.isBound()).as("the port is free again").isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"class --port 80", "class --port 70000", "class --port x", "class --climate mars"})
  void badInputIsOneMessageAndCodeTwo(String call) {
    Bench.Outcome r = Bench.run(call.split(" "));
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).isNotBlank().doesNotContain("Exception");
    assertThat(r.out()).isEmpty();
  }

  @Test
  void aClimateInWhichNoColonyLivesIsRefused(@TempDir Path dir) throws Exception {
    String bleak =
        ClimateFile.write(Catalog.climate("boreal"))
            .replaceFirst("\"laying\": \\{[^}]*}", "\"laying\": {\"06-01\": 1}");
    Path file = Files.writeString(dir.resolve("bleak.json"), bleak);
    Bench.Outcome r = Bench.run("class", "--climate", file.toString());
    assertThat(r.code()).as(r.err()).isEqualTo(2);
    assertThat(r.err()).contains("no colony lives").doesNotContain("Exception");
  }

  @Test
  void aTakenPortIsSaid() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      Bench.Outcome r = Bench.run("class", "--port", Integer.toString(taken.getLocalPort()));
      assertThat(r.code()).isEqualTo(2);
      assertThat(r.err()).contains("is not free", "leave --port out");
    }
  }
}
