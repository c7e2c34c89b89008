package broodtide.cluster;

import broodtide.files.Csv;
import broodtide.results.SheetColumns.Column;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/** Writes tables in their order: one CSV file each, or a folder of Parquet files each. */
final class TableWriter {
  /** How tables are written. */
  enum Format {
    CSV,
    PARQUET
  }

  private final SparkSession spark;
  private final ResultFolder out;
  private final Format format;

  TableWriter(SparkSession spark, ResultFolder out, Format format) {
    this.spark = spark;
    this.out = out;
    this.format = format;
  }

  void write(String name, List<Column> columns, JavaRDD<TableRow> rows) throws IOException {
    if (format == Format.CSV) {
      csv(name + ".csv", columns, rows.toLocalIterator());
    } else {
      StructType schema =
          new StructType(
              columns.stream()
                  .map(c -> DataTypes.createStructField(c.name(), type(c), true))
                  .toArray(StructField[]::new));
      JavaRDD<Row> cells = rows.map(row -> RowFactory.create(row.cells().toArray()));
      spark.createDataFrame(cells, schema).write().parquet(out.staged(name).toString());
    }
  }

  private void csv(String file, List<Column> columns, Iterator<TableRow> rows) throws IOException {
    try (OutputStream to = out.open(file)) {
      line(to, columns.stream().map(Column::name).toList());
      while (rows.hasNext()) {
        line(to, Csv.cells(rows.next().cells()));
      }
    }
  }

  private static void line(OutputStream to, List<String> cells) throws IOException {
    to.write(Csv.lineOf(cells).getBytes(StandardCharsets.UTF_8));
  }

  private static DataType type(Column column) {
    return switch (column.kind()) {
      case TEXT -> DataTypes.StringType;
      case DAY -> DataTypes.DateType;
      case COUNT -> DataTypes.IntegerType;
      case NUMBER -> DataTypes.DoubleType;
    };
  }
}
