/**
 * The core as a job on Apache Spark, for tables of washes that live in a cluster. The job has no
 * figures of its own: {@link broodtide.assessment.HiveAnswer} works out each hive, {@link
 * broodtide.assessment.ApiaryCount} the hives of a yard, and the sheet has the bytes that one
 * machine gives it, whatever the number of partitions, cores and executors.
 *
 * <p>{@code InputTables} reads tables through {@link broodtide.study.RowSieve}; {@code ColonyRows}
 * judges the rows of one colony together, {@code YardRows} the colonies of one yard. {@code
 * YardWorker} works out one yard after the other, one thread each. {@code HiveJob} puts these
 * together; {@code ResultFolder} makes its results appear whole or not at all. Entry point: {@link
 * broodtide.cluster.ClusterMain}.
 *
 * <p>Nothing imports this package. Whatever crosses from one machine to another is {@link
 * java.io.Serializable}; options cross as the words of the command line and are read again.
 */
@NullMarked
package broodtide.cluster;

import org.jspecify.annotations.NullMarked;
