/**
 * Where pages read. A read-only transaction of a request that asks for something (GET, HEAD) goes
 * to a standby, if one is named and has followed far enough; everything else stays on the primary:
 * writing, judging, exports, jobs, and whether a key or a link still opens. Such a read does not
 * wait without end for a database that is silent.
 */
@NullMarked
package org.limbspan.platform.reads;

import org.jspecify.annotations.NullMarked;
