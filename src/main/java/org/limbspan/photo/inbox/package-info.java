/**
 * The watched folder {@code limbspan.inbox}: a rig's own computer copies its photographs into the
 * sub-folder of the rig's slug, and they are taken from there.
 */
@NullMarked
package org.limbspan.photo.inbox;

import org.jspecify.annotations.NullMarked;
