package broodtide.catalog;

/**
 * Something that a file refers to by name or path.
 *
 * @param written how the file names it
 * @param value what is meant
 * @param <T> what it is
 */
public record Referred<T>(String written, T value) {}
