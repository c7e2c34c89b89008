package broodtide.cli;

/** A record of washes whose names and notes try to break out of the report. */
final class HostileRecord {
  static final String SCRIPT = "<script>document.title='broken'</script>";
  static final String FORMULA = "=HYPERLINK(\"http://x.example\",\"A&B\")";
  static final String LONG = "Averylongnamewithoutanyblank".repeat(4);
  static final String IMAGE = "\"><img src=x onerror=\"document.title='broken'\">";
  static final String CLOSING = "</td></table></style></svg>]]>--> &amp; 'q' \u202egnirts";

  private HostileRecord() {}

  static String csv() {
    return "date,colony,mites,bees,method,frame,note\n"
        + row("2025-05-02", SCRIPT, "1,300,alcohol,brood-centre", IMAGE)
        + row("2025-06-01", SCRIPT, "3,310,powdered-sugar,honey", CLOSING)
        + row("2025-05-02", FORMULA, "0,,alcohol,mixed", LONG)
        + row("2025-05-02", LONG, "2,295,alcohol,mixed", "");
  }

  private static String row(String date, String colony, String middle, String note) {
    return date + "," + quoted(colony) + "," + middle + "," + quoted(note) + "\n";
  }

  private static String quoted(String cell) {
    return '"' + cell.replace("\"", "\"\"") + '"';
  }
}
