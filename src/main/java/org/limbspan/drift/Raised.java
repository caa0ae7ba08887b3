package org.limbspan.drift;

/**
 * That the evidence was enough at one time, whatever became of it.
 *
 * @param index index of the reading with which it was
 * @param change the likeliest change then
 */
record Raised(int index, Change change) {}
