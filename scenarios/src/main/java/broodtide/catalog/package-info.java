/**
 * Shelves of what ships with the project, and the way to files of a user's own.
 *
 * <p>A {@link broodtide.catalog.Shelf} is one kind of file: its names, in the order of its index,
 * and a reader. Wherever a name is expected, a path that holds a {@code /} or ends in {@code .json}
 * leads to a user's file instead. A name that no file has is refused with the nearest one. Entry
 * points:
 *
 * <ul>
 *   <li>{@link broodtide.catalog.Catalog#climate} and {@link broodtide.catalog.Catalog#control}
 *       give a climate or a control by name or path; {@link broodtide.catalog.Catalog#CLIMATES} and
 *       {@link broodtide.catalog.Catalog#CONTROLS} are the shelves themselves;
 *   <li>{@link broodtide.catalog.Catalog#threshold} gives a set of treatment thresholds by name, by
 *       path, or as a plain figure such as "3" or "9/300"; {@link
 *       broodtide.catalog.Catalog#THRESHOLDS} is their shelf.
 * </ul>
 *
 * <p>A {@link broodtide.catalog.ControlTemplate} is a control before it is placed in the calendar:
 * its usual values, what trials saw of it, notes and cautions. {@link
 * broodtide.catalog.ControlTemplate#at} places it on a day. {@link broodtide.catalog.Assumptions}
 * and {@link broodtide.catalog.Surroundings} turn a beekeeper's words, such as frames of bees, or
 * few or many colonies near by, into numbers.
 *
 * <p>{@link broodtide.catalog.ClimateFile}, {@link broodtide.catalog.ControlTemplateFile} and
 * {@link broodtide.catalog.ThresholdFile} read and write the files. Their forms, with {@link
 * broodtide.catalog.ControlFields}, {@link broodtide.catalog.ClimateForm}, {@link
 * broodtide.catalog.LibraryForm} and {@link broodtide.catalog.ThresholdForm}, are public because
 * files of a study are built from the same parts.
 *
 * <p>All types are immutable and may be shared between threads. Files are read anew at each call;
 * faulty ones are refused with {@link broodtide.forms.BadInput}.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.catalog;

import org.jspecify.annotations.NullMarked;
