package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.lesson.Library;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The library is read from within a jar as from a folder. */
class LibraryJarTest {
  @Test
  void studiesAndWhatTheyReferToAreFoundInAJar(@TempDir Path dir) throws Exception {
    Path classes =
        Path.of(Library.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    Path jar = dir.resolve("scenarios.jar");
    pack(classes, jar);
    List<URL> urls = new ArrayList<>(List.of(jar.toUri().toURL()));
    for (Path entry : classPath()) {
      if (!entry.equals(classes.toAbsolutePath())) {
        urls.add(entry.toUri().toURL());
      }
    }
    try (URLClassLoader loader =
        new URLClassLoader(urls.toArray(URL[]::new), ClassLoader.getPlatformClassLoader())) {
      Class<?> library = loader.loadClass(Library.class.getName());
      assertThat(library.getProtectionDomain().getCodeSource().getLocation())
          .isEqualTo(jar.toUri().toURL());
      Object study = library.getMethod("study", String.class).invoke(null, "larkmeadow");
      assertThat(study.toString().replaceAll("Curve@\\w+", "Curve@"))
          .isEqualTo(Library.study("larkmeadow").toString().replaceAll("Curve@\\w+", "Curve@"));
    }
  }

  private static List<Path> classPath() {
    Pattern separator = Pattern.compile(Pattern.quote(File.pathSeparator));
    return separator
        .splitAsStream(System.getProperty("java.class.path"))
        .map(entry -> Path.of(entry).toAbsolutePath())
        .toList();
  }

  private static void pack(Path folder, Path jar) throws IOException {
    try (OutputStream out = Files.newOutputStream(jar);
        JarOutputStream zip = new JarOutputStream(out);
        Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        zip.putNextEntry(new JarEntry(folder.relativize(file).toString().replace('\\', '/')));
        Files.copy(file, zip);
      }
    }
  }
}
