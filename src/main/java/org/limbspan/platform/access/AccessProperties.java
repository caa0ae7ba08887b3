package org.limbspan.platform.access;

import java.time.Duration;
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
 * @param proxies addresses of reverse proxies whose word on client and scheme is taken
 * @param login how long one lasts
 */
@ConfigurationProperties("limbspan")
record AccessProperties(
    @Nullable String ownerPassword,
    @DefaultValue List<String> hosts,
    @DefaultValue List<String> proxies,
    @DefaultValue Login login) {

  /**
   * How long a login in a browser lasts.
   *
   * @param idle without a request
   * @param longest whatever comes
   */
  record Login(@DefaultValue("12h") Duration idle, @DefaultValue("7d") Duration longest) {}

  AccessProperties {
    ownerPassword = ownerPassword == null || ownerPassword.isBlank() ? null : ownerPassword;
    hosts = List.copyOf(hosts);
    proxies = List.copyOf(proxies);
  }
}
