package broodtide.report;

import broodtide.assessment.ApiarySheet;
import broodtide.files.Csv;
import broodtide.results.SheetColumns;

/**
 * The sheet of an apiary as {@code sheet.csv}: a row for each hive, the most urgent first, with
 * {@link SheetColumns}. Cells that do not apply are empty.
 */
public final class SheetFile {
  private SheetFile() {}

  /**
   * {@return the text of the file}
   *
   * @param sheet the apiary
   */
  public static String of(ApiarySheet sheet) {
    Csv csv = new Csv(SheetColumns.names());
    sheet.rows().forEach(row -> csv.row(Csv.cells(SheetColumns.cells(row))));
    return csv.finish();
  }
}
