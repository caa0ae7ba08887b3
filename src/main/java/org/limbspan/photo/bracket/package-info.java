/**
 * Frames into readings: which photographs belong together, and their common diameter. Pure: what
 * comes out depends on the frames alone, not on the order in which they arrived. Entry points
 * {@link org.limbspan.photo.bracket.Brackets} and {@link
 * org.limbspan.photo.bracket.CombinedFrames}.
 */
@NullMarked
package org.limbspan.photo.bracket;

import org.jspecify.annotations.NullMarked;
