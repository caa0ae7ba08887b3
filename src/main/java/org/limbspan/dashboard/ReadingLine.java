package org.limbspan.dashboard;

/**
 * A reading that photographs made, on a line.
 *
 * @param address of its page
 * @param taken when, in the rig's time zone
 * @param words its frames and diameter
 */
record ReadingLine(String address, String taken, String words) {}
