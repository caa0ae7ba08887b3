package org.limbspan.platform.jobs;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How jobs are looked after.
 *
 * @param look how often it is looked whether one is due
 * @param heartbeat how often an instance says that it still has one in hand; after {@value
 *     Jobs#MISSED_HEARTBEATS} that did not come another takes it over
 */
@ConfigurationProperties("limbspan.jobs")
record JobProperties(@DefaultValue("30s") Duration look, @DefaultValue("1m") Duration heartbeat) {}
