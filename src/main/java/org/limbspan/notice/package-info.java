/**
 * Tells the owner: mail, webhook and feed. Entry point {@link org.limbspan.notice.Notices}.
 *
 * <p>What is to be told is written in the transaction of what it tells and delivered afterwards, at
 * least once and in order to each recipient; each notice carries an id by which a receiver leaves
 * out what it has. Nothing is told until a recipient is entered and wants it.
 */
@ApplicationModule(
    allowedDependencies = {
      "platform",
      "platform :: jobs",
      "intake",
      "rig",
      "reading",
      "watch",
      "sky",
      "scale"
    })
@NullMarked
package org.limbspan.notice;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
