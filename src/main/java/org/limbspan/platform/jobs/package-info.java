/**
 * What the service does again and again by itself, on one instance at a time however many use the
 * database. A module declares a bean {@link org.limbspan.platform.jobs.Job}; entry point for all
 * else is {@link org.limbspan.platform.jobs.Jobs}.
 */
@NamedInterface("jobs")
@NullMarked
package org.limbspan.platform.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
