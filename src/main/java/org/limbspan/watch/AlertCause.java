package org.limbspan.watch;

/**
 * A likely cause of an alert.
 *
 * @param cause its word, such as {@code zoom-moved}
 * @param probability 0 to 1
 * @param words the cause as a person would put it
 */
public record AlertCause(String cause, double probability, String words) {}
