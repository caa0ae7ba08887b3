package org.limbspan.platform.access;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What the owner says about access.
 *
 * @param ownerPassword password of the user {@code owner}, in plain text or in the form <code>
 *     {bcrypt}...</code>
 * @param hosts names under which the service is reached, beside those of the loopback interface
 */
@ConfigurationProperties("limbspan")
record AccessProperties(@Nullable String ownerPassword, @DefaultValue List<String> hosts) {

  AccessProperties {
    ownerPassword = ownerPassword == null || ownerPassword.isBlank() ? null : ownerPassword;
    hosts = List.copyOf(hosts);
  }
}
