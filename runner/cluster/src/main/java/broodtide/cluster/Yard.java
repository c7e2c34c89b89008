package broodtide.cluster;

import java.io.Serializable;
import java.util.List;

/**
 * The colonies of one yard, which share a part of their season: the unit of work.
 *
 * @param key tells yards apart
 * @param region its region; empty when none is named
 * @param climate its climate
 * @param hives its colonies, by name
 */
record Yard(YardKey key, String region, String climate, List<Hive> hives) implements Serializable {}
