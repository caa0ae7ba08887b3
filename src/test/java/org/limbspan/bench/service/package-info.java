/**
 * Main classes that start the service as its user does, measure it or hurt it, and what they share.
 */
@NullMarked
package org.limbspan.bench.service;

import org.jspecify.annotations.NullMarked;
