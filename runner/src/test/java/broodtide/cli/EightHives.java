package broodtide.cli;

/**
 * An invented apiary as beekeepers keep one: odd names, dates apart, one hive counted once, one
 * without a mite, one that was treated, one that was split, and one not counted for weeks.
 */
final class EightHives {
  static final String LONG = "The one by the old apple tree behind the shed with a leaning roof";

  private EightHives() {}

  /** The table of washes. */
  static String csv() {
    return """
    date,colony,mites,bees
    2025-05-10,Old oak,1,300
    2025-06-14,Old oak,3,310
    2025-07-12,Old oak,9,305
    2025-08-02,Old oak,14,298
    2025-05-10,"Ost-Ecke ""Lise""\",0,300
    2025-06-14,"Ost-Ecke ""Lise""\",0,290
    2025-08-02,"Ost-Ecke ""Lise""\",0,312
    2025-08-02,7,4,300
    2025-06-14,LONG,2,301
    2025-07-12,LONG,5,280
    2025-08-01,LONG,7,300
    2025-05-11,\u017dofka <b>&</b>,1,300
    2025-07-13,\u017dofka <b>&</b>,2,300
    2025-08-02,\u017dofka <b>&</b>,6,
    2025-04-20,Nuc 3 (split),2,300
    2025-06-20,Nuc 3 (split),1,200
    2025-07-20,Nuc 3 (split),2,250
    2025-06-14,Red,12,300
    2025-07-26,Red,2,300
    2025-03-30,North wall,0,300
    2025-05-01,North wall,2,300
    2025-06-10,North wall,6,300
    """
        .replace("LONG", LONG);
  }

  /** The table of treatments. */
  static String given() {
    return """
    date,colony,control
    2025-06-28,Red,formic-strips
    2025-05-15,Nuc 3 (split),split
    """;
  }
}
