package org.limbspan.platform.access;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * How much is taken from whom.
 *
 * @param body longest JSON or CSV body; photographs and ledgers have limits of their own
 * @param perMinute requests in a minute from one address of elsewhere, or with one key
 * @param atOnce requests at work together that read or write much: photographs, ledgers, CSV files
 * @param patience how long one of those waits for its turn
 */
@ConfigurationProperties("limbspan.limits")
record LimitProperties(
    @DefaultValue("64MB") DataSize body,
    @DefaultValue("600") int perMinute,
    @DefaultValue("8") int atOnce,
    @DefaultValue("10s") Duration patience) {}
