/** Forms of JSON files: fields, faults with their place, schemas; nothing of bees. */
@NullMarked
package broodtide.forms;

import org.jspecify.annotations.NullMarked;
