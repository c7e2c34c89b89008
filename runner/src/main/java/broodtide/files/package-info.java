/**
 * Safe files: the results of a run are there whole or not at all, and nothing else is touched.
 *
 * <p>A command names its folder, what it reads and what it may write, before it works: {@link
 * broodtide.files.Outputs#into}. When all is worked out and the answer is printed, it writes
 * everything at once: {@link broodtide.files.Outputs#write}. Files that are the user's afterwards,
 * such as a study to begin with, go through {@link broodtide.files.Outputs#handedOver}. {@link
 * broodtide.files.Csv} sets tables. Every refusal is an {@link broodtide.files.OutputRefused},
 * whose message names the file and the remedy.
 *
 * <p>What holds, whenever a run ends and however it is killed:
 *
 * <ul>
 *   <li>No input of the run is replaced, and no file that this program did not write. What it wrote
 *       stands in a manifest, {@code broodtide-files.json}, with size and SHA-256; a file that is
 *       not listed there, or was changed since, is refused before any work is done.
 *   <li>The files of one run are one generation. They are staged in a hidden folder within the
 *       folder, and the manifest is moved into place last. A stage with a manifest is whole: the
 *       next run moves what is left of it into place. A stage without one is thrown away. A reader
 *       who finds no stage and every sum right has one whole generation.
 *   <li>Files of the last generation that the new one lacks are taken away if they are unchanged.
 *   <li>Exit code 2 means that nothing was written: the answer is printed first, and an answer that
 *       cannot be printed leaves no files.
 * </ul>
 *
 * <p>Any number of threads and programs may write into one folder; each holds its lock for the
 * moment of writing and the last one to write stays. Only {@code Generation} changes files.
 */
@NullMarked
package broodtide.files;

import org.jspecify.annotations.NullMarked;
