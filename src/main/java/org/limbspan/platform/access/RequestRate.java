package org.limbspan.platform.access;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Refused;
import org.limbspan.platform.Sha256;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/**
 * So many requests a minute from an address of elsewhere (of IPv6 its first 64 bits, which are one
 * household's), and with a key, from wherever. The last thousand are remembered.
 */
final class RequestRate extends OncePerRequestFilter {

  private static final int REMEMBERED = 1000;
  private static final int NETWORK_BYTES = 8;
  private static final String BEARER = "bearer ";

  private final int perMinute;
  private final HandlerExceptionResolver problems;
  private final Map<String, Bucket> buckets =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
          return size() > REMEMBERED;
        }
      };

  RequestRate(int perMinute, HandlerExceptionResolver problems) {
    this.perMinute = perMinute;
    this.problems = problems;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    String client = client(request);
    ConsumptionProbe probe = client == null ? null : bucket(client).tryConsumeAndReturnRemaining(1);
    if (probe == null || probe.isConsumed()) {
      chain.doFilter(request, response);
      return;
    }
    long waitS = 1 + Duration.ofNanos(probe.getNanosToWaitForRefill()).toSeconds();
    response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(waitS));
    problems.resolveException(
        request,
        response,
        null,
        Refused.tooOften(
            "More than %d requests came within a minute; send this one again in %d s."
                .formatted(perMinute, waitS)));
  }

  /** Null for whoever sits at this computer without a key. */
  private static @Nullable String client(HttpServletRequest request) {
    String key = request.getHeader(HttpHeaders.AUTHORIZATION);
    if (key != null && key.toLowerCase(Locale.ROOT).startsWith(BEARER)) {
      return "key "
          + HexFormat.of().formatHex(Sha256.of(key.getBytes(StandardCharsets.UTF_8)), 0, 16);
    }
    try {
      InetAddress address = InetAddress.getByName(request.getRemoteAddr());
      byte[] bytes = address.getAddress();
      return address.isLoopbackAddress()
          ? null
          : HexFormat.of().formatHex(Arrays.copyOf(bytes, Math.min(bytes.length, NETWORK_BYTES)));
    } catch (UnknownHostException e) {
      return request.getRemoteAddr();
    }
  }

  private Bucket bucket(String client) {
    synchronized (buckets) {
      return buckets.computeIfAbsent(
          client,
          its ->
              Bucket.builder()
                  .addLimit(
                      limit ->
                          limit.capacity(perMinute).refillGreedy(perMinute, Duration.ofMinutes(1)))
                  .build());
    }
  }
}
