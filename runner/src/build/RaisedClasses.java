import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.commons.JSRInlinerAdapter;

/**
 * Copies a jar and raises the classes in it that were compiled for a Java before 7 to the format of
 * Java 8. The JVM checks such old classes by a slow way of its own at every start and takes few of
 * them into an archive of classes. What they do stays as it is; stack maps are worked out anew.
 *
 * <p>Run by the build as {@code java RaisedClasses.java OLD_JAR NEW_JAR}. Entries keep their order
 * and times, so that the same jar gives the same bytes.
 */
final class RaisedClasses {
  private RaisedClasses() {}

  public static void main(String[] args) throws IOException {
    Path old = Path.of(args[0]);
    URL[] place = {old.toUri().toURL()};
    try (URLClassLoader classes = new URLClassLoader(place, ClassLoader.getPlatformClassLoader());
        ZipFile from = new ZipFile(old.toFile());
        ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(Path.of(args[1])))) {
      for (ZipEntry entry : Collections.list(from.entries())) {
        ZipEntry copy = new ZipEntry(entry.getName());
        copy.setTimeLocal(entry.getTimeLocal());
        to.putNextEntry(copy);
        try (InputStream in = from.getInputStream(entry)) {
          byte[] bytes = in.readAllBytes();
          to.write(old(entry, bytes) ? raised(bytes, classes) : bytes);
        }
        to.closeEntry();
      }
    }
  }

  private static boolean old(ZipEntry entry, byte[] bytes) {
    return entry.getName().endsWith(".class") && bytes[7] < Opcodes.V1_7;
  }

  private static byte[] raised(byte[] bytes, ClassLoader classes) {
    ClassWriter writer =
        new ClassWriter(ClassWriter.COMPUTE_FRAMES) {
          @Override
          protected ClassLoader getClassLoader() {
            return classes;
          }
        };
    new ClassReader(bytes).accept(new Raised(writer), ClassReader.SKIP_FRAMES);
    return writer.toByteArray();
  }

  private static final class Raised extends ClassVisitor {
    Raised(ClassVisitor next) {
      super(Opcodes.ASM9, next);
    }

    @Override
    public void visit(
        int version, int access, String name, String signature, String above, String[] kinds) {
      super.visit(Opcodes.V1_8, access, name, signature, above, kinds);
    }

    /** Newer formats know no jumps into subroutines. */
    @Override
    public MethodVisitor visitMethod(
        int access, String name, String type, String signature, String[] thrown) {
      MethodVisitor next = super.visitMethod(access, name, type, signature, thrown);
      return new JSRInlinerAdapter(next, access, name, type, signature, thrown);
    }
  }
}
