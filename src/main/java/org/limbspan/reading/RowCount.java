package org.limbspan.reading;

/**
 * How far the rows of one rig were read. Rows are only ever added, one writer at a time, so those
 * up to an id are as many as they were for as long as they are the same.
 *
 * @param lastId the greatest id among them; 0 if there is none
 */
record RowCount(long count, long lastId) {}
