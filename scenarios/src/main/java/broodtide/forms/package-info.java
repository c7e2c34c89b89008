/**
 * Forms of JSON files. A form reads a value, writes it and describes it as a schema, so reader,
 * writer and schema cannot disagree. Apart from curves over the year and rates with a measure,
 * nothing here knows of bees.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.forms.Reading#whole} reads a text from a {@link broodtide.forms.Source} by
 *       a {@link broodtide.forms.Form}, and throws {@link broodtide.forms.BadInput} with every
 *       fault there is;
 *   <li>{@link broodtide.forms.NeatJson#text} lays out what {@link broodtide.forms.Form#write}
 *       returns;
 *   <li>{@link broodtide.forms.SchemaParts} gathers the parts of a schema that several places refer
 *       to.
 * </ul>
 *
 * <p>How the parts fit together: {@code JsonTree} turns the text into {@link broodtide.forms.Node}s
 * that know their line. An {@link broodtide.forms.ObjectForm} is made of {@link
 * broodtide.forms.Field}s, each with a name, a form, a sentence that explains it and perhaps a
 * default; it hands what was read as {@link broodtide.forms.Fields} to a function that makes the
 * value. {@link broodtide.forms.KindForm} chooses among objects by their field "kind". {@link
 * broodtide.forms.NumberForm}, {@link broodtide.forms.WholeForm}, {@link broodtide.forms.TextForm},
 * {@link broodtide.forms.ChoiceForm}, {@link broodtide.forms.DateForm}, {@link
 * broodtide.forms.CurveForm}, {@link broodtide.forms.ListForm} and others are the forms of single
 * values.
 *
 * <p>Faults are gathered and told all at once. A {@link broodtide.forms.Fault} names file, line,
 * field, value and what is allowed; {@link broodtide.forms.Nearest} adds the word that was most
 * likely meant. Values that are each sound but clash are refused by the object that is made, and
 * the refusal becomes a fault with its place.
 *
 * <p>Forms and fields are immutable and may be shared between threads. A {@link
 * broodtide.forms.Reading} and its {@link broodtide.forms.Faults} belong to one file and one
 * thread.
 */
@NullMarked
package broodtide.forms;

import org.jspecify.annotations.NullMarked;
