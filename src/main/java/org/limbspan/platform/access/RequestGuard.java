package org.limbspan.platform.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Problem;
import org.limbspan.platform.Refused;
import org.limbspan.platform.Violation;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/**
 * Refuses what a web page of somebody else makes the owner's browser send: a request addressed to a
 * foreign name (DNS rebinding), one with a foreign {@code Origin}, and one that would change
 * something and comes from another site (Fetch Metadata, {@code Sec-Fetch-Site}).
 *
 * <p>A program that is not a browser sends neither {@code Origin} nor {@code Sec-Fetch-Site} and
 * passes.
 */
final class RequestGuard extends OncePerRequestFilter {

  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS", "TRACE");
  private static final Set<String> OWN_SITE = Set.of("same-origin", "none");
  private static final String FETCH_SITE = "Sec-Fetch-Site";

  private final AccessPolicy policy;
  private final HandlerExceptionResolver problems;

  RequestGuard(AccessPolicy policy, HandlerExceptionResolver problems) {
    this.policy = policy;
    this.problems = problems;
  }

  @Override
  protected void doFilterInternal(
      HttpServletRequest request, HttpServletResponse response, FilterChain chain)
      throws ServletException, IOException {
    Problem problem = problem(request);
    if (problem == null) {
      chain.doFilter(request, response);
    } else {
      problems.resolveException(request, response, null, problem);
    }
  }

  private @Nullable Problem problem(HttpServletRequest request) {
    String hostHeader = request.getHeader(HttpHeaders.HOST);
    Optional<Authority> host = Authority.ofHost(hostHeader);
    if (host.isEmpty() || !policy.allowsHost(host.get().host())) {
      return refusal(
          "This name does not belong to the service.",
          HttpHeaders.HOST,
          hostHeader,
          "one of "
              + String.join(", ", policy.hosts().stream().sorted().toList())
              + "; more with limbspan.hosts");
    }
    boolean changing = !READING.contains(request.getMethod());
    String origin = request.getHeader(HttpHeaders.ORIGIN);
    if (origin != null && isForeign(origin, host.get(), changing)) {
      return refusal(
          "The request comes from a page of another site.",
          HttpHeaders.ORIGIN,
          origin,
          "the origin of the service itself, or none");
    }
    String site = request.getHeader(FETCH_SITE);
    if (changing && site != null && !OWN_SITE.contains(site)) {
      return refusal(
          "The request comes from a page of another site.",
          FETCH_SITE,
          site,
          "same-origin or none");
    }
    return null;
  }

  /** An opaque origin may read, as any link may, since its page is not shown the answer. */
  private static boolean isForeign(String origin, Authority host, boolean changing) {
    return origin.equals("null")
        ? changing
        : Authority.ofOrigin(origin).filter(host::equals).isEmpty();
  }

  private static Problem refusal(
      String detail, String header, @Nullable String value, String expected) {
    return Refused.forbidden(detail, List.of(new Violation(header, value, expected)));
  }
}
