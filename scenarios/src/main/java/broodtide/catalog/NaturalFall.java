package broodtide.catalog;

/**
 * Mites that fall of themselves while a treatment acts, as the untreated groups of trials show. A
 * colony simulated without the treatment loses such mites as well.
 */
public final class NaturalFall {
  /**
   * The smallest share of all mites: Gregorc and Planinc 2012, J. Apic. Sci. 56:61, Slovenia, 3.1
   * %.
   */
  public static final double LEAST = 0.03;

  /** The largest: Mattila and Otis 1999, Am. Bee J. 139:947, Ontario, 14 to 23 %. */
  public static final double MOST = 0.23;

  private NaturalFall() {}
}
