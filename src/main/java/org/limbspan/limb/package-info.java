/** Pure: a photograph's pixels to the disc's diameter with its standard uncertainty. */
@NullMarked
package org.limbspan.limb;

import org.jspecify.annotations.NullMarked;
