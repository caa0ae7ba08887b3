package org.limbspan.sky;

import java.util.Optional;

/**
 * A pass as seen over the site's own horizon. The Moon may go behind a tree or a roof and come out
 * again in between.
 *
 * @param rise the Moon where its upper limb first shows over the line; empty if it stood over it
 *     from the start, without rising
 * @param set the Moon where its upper limb was last seen; empty if it stays over it to the end
 */
public record PassOverLine(Optional<MoonSight> rise, Optional<MoonSight> set) {}
