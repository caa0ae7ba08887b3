package org.limbspan.notice;

import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The URL of a webhook. */
record WebhookAddress(URI uri) {

  static final String EXPECTED =
      "an address beginning with https:// or http://, with a host, without user name or fragment";
  static final String EXPECTED_PUBLIC =
      "a host of the public internet (limbspan.notices.private-addresses=true allows others)";

  private static final Set<String> SCHEMES = Set.of("http", "https");
  private static final int LONGEST = 2000;
  private static final int LAST_PORT = 65_535;

  /** The URL of that text; empty if it is none. */
  static Optional<WebhookAddress> of(String text) {
    try {
      URI uri = new URI(text);
      boolean fits =
          text.length() <= LONGEST
              && text.equals(uri.toASCIIString())
              && uri.getScheme() != null
              && SCHEMES.contains(uri.getScheme().toLowerCase(Locale.ROOT))
              && uri.getHost() != null
              && uri.getRawUserInfo() == null
              && uri.getRawFragment() == null
              && uri.getPort() != 0
              && uri.getPort() <= LAST_PORT;
      return fits ? Optional.of(new WebhookAddress(uri)) : Optional.empty();
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }

  /**
   * Whether every address of the host is one of the public internet.
   *
   * @throws UnknownHostException if the host has none
   */
  boolean isPublic() throws UnknownHostException {
    for (InetAddress address : InetAddress.getAllByName(uri.getHost())) {
      if (!PublicAddresses.isPublic(address)) {
        return false;
      }
    }
    return true;
  }
}
