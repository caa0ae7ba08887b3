/** Main classes that hurt the running service on purpose, and what they share. */
@NullMarked
package org.limbspan.bench.fault;

import org.jspecify.annotations.NullMarked;
