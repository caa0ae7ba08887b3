package org.limbspan.platform.access;

import java.net.InetAddress;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.StartRefused;

/**
 * What follows from where the service listens and what the owner said.
 *
 * @param login whether the owner's password is asked for
 * @param hosts names that a request may be addressed to; empty if any may
 */
record AccessPolicy(boolean login, Set<String> hosts) {

  static final Set<String> LOOPBACK_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

  private static final int SHORTEST_PASSWORD = 12;

  AccessPolicy {
    hosts = Set.copyOf(hosts);
  }

  /**
   * @param address address on which the service listens; null means every one of this computer
   * @throws StartRefused if the service could be reached from outside without a password
   */
  static AccessPolicy of(@Nullable InetAddress address, AccessProperties properties) {
    boolean loopback = address != null && address.isLoopbackAddress();
    String password = properties.ownerPassword();
    if (password == null && !(loopback && properties.hosts().isEmpty())) {
      throw new StartRefused(
          "The service would be reached from outside without a password: "
              + (loopback
                  ? "limbspan.hosts names " + String.join(", ", properties.hosts())
                  : "it would listen on " + (address == null ? "every address" : address)),
          "Set the owner's password, best in the environment as LIMBSPAN_OWNERPASSWORD, or listen"
              + " on 127.0.0.1 without limbspan.hosts.");
    }
    if (password != null && password.length() < SHORTEST_PASSWORD) {
      throw new StartRefused(
          "The owner's password is shorter than " + SHORTEST_PASSWORD + " characters.",
          "Choose a longer one.");
    }
    return new AccessPolicy(password != null, names(loopback, properties));
  }

  private static Set<String> names(boolean loopback, AccessProperties properties) {
    if (!loopback && properties.hosts().isEmpty()) {
      return Set.of();
    }
    Set<String> names = new HashSet<>(LOOPBACK_NAMES);
    properties.hosts().forEach(name -> names.add(name.toLowerCase(Locale.ROOT)));
    return names;
  }

  boolean allowsHost(String name) {
    return hosts.isEmpty() || hosts.contains(name.toLowerCase(Locale.ROOT));
  }
}
