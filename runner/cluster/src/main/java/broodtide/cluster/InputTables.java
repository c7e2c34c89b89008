package broodtide.cluster;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.measure.RefusedException;
import broodtide.study.RowSieve;
import broodtide.study.RowSieve.Table;
import broodtide.table.Sheet;
import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.jspecify.annotations.Nullable;

/**
 * Reads a table from one file or a folder of files: CSV, each file as the command line reads it, or
 * Parquet with the same columns.
 */
final class InputTables {
  private static final String PARQUET = ".parquet";

  private final SparkSession spark;
  private final LocalDate today;

  InputTables(SparkSession spark, LocalDate today) {
    this.spark = spark;
    this.today = today;
  }

  /**
   * What came of a row, or of a whole file that cannot be read.
   *
   * @param row the row, sound by itself
   * @param rejected the row, if it is not
   * @param refusal why a whole file cannot be read
   */
  record Sifted(@Nullable InputRow row, @Nullable RejectedRow rejected, @Nullable String refusal)
      implements Serializable {
    static Sifted sound(InputRow row) {
      return new Sifted(row, null, null);
    }

    static Sifted faulty(RejectedRow row) {
      return new Sifted(null, row, null);
    }

    static Sifted refused(String reason) {
      return new Sifted(null, null, reason);
    }
  }

  /**
   * {@return the rows of a table}
   *
   * @param table what it is
   * @param option the option that names it
   * @param path a file or a folder
   */
  JavaRDD<Sifted> read(Table table, String option, String path) {
    List<FileStatus> files = files(option, path);
    boolean parquet = files.stream().allMatch(f -> f.getPath().getName().endsWith(PARQUET));
    String[] names = files.stream().map(f -> f.getPath().toString()).toArray(String[]::new);
    List<String> further = table == Table.WASHES ? ColonyRows.FURTHER : List.of();
    LocalDate day = today;
    if (parquet) {
      return parquet(table, path, names, further);
    }
    return JavaSparkContext.fromSparkContext(spark.sparkContext())
        .binaryFiles(String.join(",", names), names.length)
        .flatMap(
            file -> {
              try (InputStream in = file._2().open()) {
                return csv(table, in, shown(file._1()), further, day);
              }
            });
  }

  private List<FileStatus> files(String option, String path) {
    try {
      org.apache.hadoop.fs.Path place = new org.apache.hadoop.fs.Path(path);
      FileSystem system = place.getFileSystem(spark.sparkContext().hadoopConfiguration());
      if (!system.exists(place)) {
        throw BadInput.of(Fault.of(option, "there is no file or folder " + path));
      }
      List<FileStatus> files =
          Arrays.stream(system.listStatus(place))
              .filter(f -> f.isFile() && !f.getPath().getName().matches("[._].*"))
              .toList();
      if (files.isEmpty()) {
        throw BadInput.of(Fault.of(option, "the folder " + path + " holds no table"));
      }
      for (FileStatus file : files) {
        if (file.getPath().toString().contains(",")) {
          throw BadInput.of(
              Fault.of(option, file.getPath() + " has a comma in its name; rename it"));
        }
      }
      return files;
    } catch (IOException e) {
      throw BadInput.of(Fault.of(option, path + " cannot be read: " + e.getMessage()));
    }
  }

  /** Files of this machine by their path alone. */
  private static String shown(String uri) {
    return uri.startsWith("file:") ? Path.of(uri.replaceFirst("^file:/*", "/")).toString() : uri;
  }

  /** The rows of one CSV file. */
  static Iterator<Sifted> csv(
      Table table, InputStream in, String name, List<String> further, LocalDate today) {
    List<Sifted> out = new ArrayList<>();
    try {
      RowSieve.sift(table, in, name, further, today, new Taker(name, out));
    } catch (RefusedException e) {
      return List.of(Sifted.refused(e.reason())).iterator();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.iterator();
  }

  private JavaRDD<Sifted> parquet(Table table, String path, String[] names, List<String> further) {
    Dataset<Row> all = spark.read().parquet(names);
    List<String> columns = Arrays.stream(all.columns()).map(Sheet::columnName).toList();
    List<String> missing = table.required().stream().filter(c -> !columns.contains(c)).toList();
    if (!missing.isEmpty()) {
      throw BadInput.of(
          Fault.of(
              path,
              "missing "
                  + String.join(", ", missing)
                  + "; the table must have the columns "
                  + String.join(",", table.required())));
    }
    List<Column> cells = new ArrayList<>();
    for (String column : all.columns()) {
      cells.add(functions.col("`" + column + "`").cast("string"));
    }
    cells.add(functions.col("_metadata.file_path"));
    cells.add(functions.col("_metadata.row_index"));
    LocalDate day = today;
    int width = columns.size();
    return all.select(cells.toArray(Column[]::new))
        .toJavaRDD()
        .flatMap(
            row -> {
              String[] values = new String[width];
              for (int i = 0; i < width; i++) {
                values[i] = row.isNullAt(i) ? "" : Sheet.strip(row.getString(i));
              }
              String name = shown(row.getString(width));
              int line = Math.toIntExact(row.getLong(width + 1) + 1);
              List<Sifted> out = new ArrayList<>();
              RowSieve.sift(
                  table,
                  columns,
                  name,
                  further,
                  day,
                  to -> to.take(line, values),
                  new Taker(name, out));
              return out.iterator();
            });
  }

  /** Keeps what the sieve hands out. */
  private record Taker(String name, List<Sifted> out) implements RowSieve.Taker {
    @Override
    public void sound(int line, String[] cells) {
      out.add(Sifted.sound(new InputRow(name, line, cells)));
    }

    @Override
    public void faulty(int line, List<Fault> faults) {
      out.add(Sifted.faulty(RejectedRow.of(name, line, faults)));
    }
  }

  /** The rows that are sound. */
  static JavaRDD<InputRow> sound(JavaRDD<Sifted> sifted) {
    return sifted.filter(s -> s.row() != null).map(s -> Objects.requireNonNull(s.row()));
  }

  /** The rows that are not. */
  static JavaRDD<RejectedRow> faulty(JavaRDD<Sifted> sifted) {
    return sifted.filter(s -> s.rejected() != null).map(s -> Objects.requireNonNull(s.rejected()));
  }

  /** Refuses the run when a whole file cannot be read. */
  static void check(JavaRDD<Sifted> sifted) {
    List<String> reasons =
        sifted.filter(s -> s.refusal() != null).map(s -> s.refusal() + "").take(BadInput.SHOWN);
    if (!reasons.isEmpty()) {
      throw new RefusedException(String.join("\n", reasons));
    }
  }
}
