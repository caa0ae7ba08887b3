package org.limbspan.platform.access;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Host and port, as a {@code Host} or an {@code Origin} header names them.
 *
 * @param host name or address in lower case, an IPv6 address in brackets
 * @param port port, or -1 for the usual one of the scheme
 */
record Authority(String host, int port) {

  /** Empty if there is no such header or it cannot be read. */
  static Optional<Authority> ofHost(@Nullable String header) {
    return header == null ? Optional.empty() : parse("http://" + header);
  }

  /** Empty if the origin is opaque ({@code null}) or cannot be read. */
  static Optional<Authority> ofOrigin(String header) {
    return parse(header);
  }

  private static Optional<Authority> parse(String uri) {
    try {
      URI parsed = new URI(uri);
      if (parsed.getHost() == null || parsed.getUserInfo() != null) {
        return Optional.empty();
      }
      boolean usual = parsed.getPort() == 80 || parsed.getPort() == 443;
      int port = usual ? -1 : parsed.getPort();
      return Optional.of(new Authority(parsed.getHost().toLowerCase(Locale.ROOT), port));
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }
}
